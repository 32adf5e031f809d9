export const student = {
  title: 'Student',
} as const;
