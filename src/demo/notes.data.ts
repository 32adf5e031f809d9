// Invented notes of an invented teacher.

export const lessonNotes: readonly string[] = [
  'Came in humming the answer phrase from last week. Kept it.',
  'Tired today; shorter turns, more listening. Better for it.',
  'Counts aloud now without being asked.',
  'Shoulders up again in the last five minutes. Shake out between turns.',
  'Played it to the one waiting outside, and smiled.',
  'Tempo runs away after the second line. Foot first, then play.',
  'Said what went wrong before I did.',
  'Practised on four days; it shows.',
  'Little practice this week. Went back one step, and it held.',
  'Wanted to go on after the bell.',
  'Asked for a harder one.',
  'Reads ahead as far as the barline, not yet across it.',
];

export const lessonPractice: readonly string[] = [
  'Ten minutes on five days: begin with the easiest thing, end with the one you like best. Stop if anything hurts.',
  'Three slow ones, one at tempo, then walk away. On five days. Stop if anything hurts.',
];
