// One Verovio toolkit for each thread, made when the first sheet is wanted and kept: loading costs a third of a second,
// and a toolkit gives back what a sheet took when the next one is loaded.

import type { VerovioToolkit } from 'verovio/esm';

let loading: Promise<VerovioToolkit> | null = null;

/** The thread's toolkit; a failed load is tried again by the next call. */
export function loadToolkit(): Promise<VerovioToolkit> {
  loading ??= load();
  return loading;
}

/** Lets the next call load a fresh one, after this one broke. */
export function forgetToolkit(): void {
  loading = null;
}

async function load(): Promise<VerovioToolkit> {
  const [{ default: createVerovioModule }, { VerovioToolkit, enableLog, LOG_OFF }] = await Promise.all([
    import('verovio/wasm'),
    import('verovio/esm'),
  ]);
  const module = await createVerovioModule();
  enableLog(LOG_OFF, module);
  return new VerovioToolkit(module);
}
