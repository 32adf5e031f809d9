type Turn = 'read' | 'change';
export interface NestingGuard {
    /** Runs `work` as a turn of this kind; throws when it is begun inside a turn that it would have to wait for. */
    enter<R>(turn: Turn, work: () => Promise<R>): Promise<R>;
}
/** `takesTurns`: whether reads and changes wait for one another too. */
export declare function createNestingGuard(takesTurns: boolean): NestingGuard;
export {};
