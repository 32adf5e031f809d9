export const students = {
  title: 'Students',
} as const;
