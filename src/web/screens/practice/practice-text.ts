// The practice that was set is a text of one task a line; a line like "15 minutes a day" in it says how long. The text is the
// one place where both are kept, so the lesson, the recap and the sheet never disagree.

export interface PracticeText {
  /** Minutes a day that the text names, or null. */
  readonly minutes: number | null;
  readonly tasks: readonly string[];
}

const minutesLine = /^\s*(\d{1,3})\s*(?:minutes|min)\s*(?:a|per)\s*day\.?\s*$/i;

/** Tasks and minutes of a practice text. `15 minutes a day\n- Scale of D` → 15, `Scale of D` */
export function readPractice(text: string): PracticeText {
  let minutes: number | null = null;
  const tasks: string[] = [];
  for (const line of text.split('\n')) {
    const named = minutesLine.exec(line);
    if (named !== null) minutes ??= Number(named[1]);
    else if (line.trim() !== '') tasks.push(line.replace(/^\s*[-–*•]\s*/, '').trim());
  }
  return { minutes, tasks };
}

/** The text with its minutes put to a number; every other line stays as it was. */
export function withMinutes(text: string, minutes: number): string {
  const line = `${minutes} minutes a day`;
  const lines = text.split('\n');
  const at = lines.findIndex((one) => minutesLine.test(one));
  if (at < 0) return text.trim() === '' ? line : `${line}\n${text}`;
  return lines.map((one, i) => (i === at ? line : one)).join('\n');
}
