import type { Store } from '#studio';
import { type Connections } from './connections.ts';
export declare function createStore(connections: Connections): Store;
