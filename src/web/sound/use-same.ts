import { useRef } from 'react';

/** The value as it was first given, while others say the same: a page that loads anew does not begin a band anew. */
export function useSame<Value>(value: Value): Value {
  const text = JSON.stringify(value);
  const kept = useRef({ text, value });
  if (kept.current.text !== text) kept.current = { text, value };
  return kept.current.value;
}
