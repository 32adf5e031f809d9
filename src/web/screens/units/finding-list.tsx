export interface FindingListProps {
  readonly findings: readonly string[];
}

/** What would surprise the teacher later, in sentences, beside what it is about. */
export function FindingList({ findings }: FindingListProps) {
  if (findings.length === 0) return null;
  return (
    <ul className="editor-findings">
      {findings.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}
