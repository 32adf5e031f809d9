// One cache for all views. Views are cheap (the server is on this machine), so they are asked for again freely.

import { QueryCache, QueryClient } from '@tanstack/react-query';
import type { CommandType } from '#contract';
import { type ApiFault, isApiFault } from './api.ts';
import { viewsTouchedBy } from './query-keys.ts';

declare module '@tanstack/react-query' {
  interface Register {
    defaultError: ApiFault;
  }
}

export const queryClient = new QueryClient({
  queryCache: new QueryCache({
    // What was removed or erased elsewhere is not shown on as if it were there.
    onError(fault, query) {
      if (isApiFault(fault) && fault.kind === 'NotFound' && query.state.data !== undefined)
        query.setState({ data: undefined });
    },
  }),
  defaultOptions: {
    queries: {
      staleTime: 30_000,
      // Only an unreachable server is worth a second try; a refusal stays one.
      retry: (count, fault) => isApiFault(fault) && fault.offline === true && count < 2,
      refetchOnWindowFocus: true,
      networkMode: 'always',
    },
    mutations: { networkMode: 'always' },
  },
});

/** Asks again for everything a change of this type may have touched. */
export function refreshAfter(type: CommandType): Promise<void> {
  const names = viewsTouchedBy(type);
  if (names === null) return queryClient.invalidateQueries();
  return queryClient.invalidateQueries({
    predicate: (query) => names.some((name) => name === query.queryKey[0]),
  });
}
