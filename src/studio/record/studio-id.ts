// A store holds one studio; its row always has this id.

import type { StudioRecord } from './records.ts';

export const studioId = 'studio:own' as StudioRecord['id'];
