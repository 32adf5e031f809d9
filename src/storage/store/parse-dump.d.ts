import { type Result } from '#core';
import type { StudioDump } from '#studio';
/** The dump in a file's text; the error is a sentence or more on what is wrong and where. */
export declare function parseDump(text: string): Result<StudioDump, string>;
