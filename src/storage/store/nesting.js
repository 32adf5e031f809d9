// A change that begins another change of the same store, and waits for it, would wait for ever: the second waits for the
// first to end. This turns such a hang into an error that names the mistake.
import { AsyncLocalStorage } from 'node:async_hooks';
import { assert } from '#core';
/** `takesTurns`: whether reads and changes wait for one another too. */
export function createNestingGuard(takesTurns) {
    const around = new AsyncLocalStorage();
    return {
        async enter(turn, work) {
            const outer = around.getStore();
            const waits = outer?.open === true && (takesTurns || (outer.turn === 'change' && turn === 'change'));
            assert(!waits, `a ${turn} is not begun inside a ${outer?.turn}: use what the ${outer?.turn} was handed`);
            const own = { turn, open: true };
            try {
                return await around.run(own, work);
            }
            finally {
                own.open = false;
            }
        },
    };
}
//# sourceMappingURL=nesting.js.map