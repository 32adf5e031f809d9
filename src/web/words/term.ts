export const term = {
  title: 'Term',
} as const;
