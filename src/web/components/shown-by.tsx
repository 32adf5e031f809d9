import type { CheckSpec } from '#listening';
import { useDescribeCheck } from '../hooks/use-describe-check.ts';
import { words } from '../words/index.ts';

/** What a recorded take can show of a check, in one sentence; nothing where there is none. */
export function ShownBy({ listenFor }: { readonly listenFor: readonly CheckSpec[] }) {
  const describe = useDescribeCheck();
  if (listenFor.length === 0) return null;
  return (
    <span className="faint">
      {words.listenFor.shownBy} {listenFor.map(describe).join('; ')}.
    </span>
  );
}
