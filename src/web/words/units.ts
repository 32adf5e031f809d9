export const units = {
  title: 'Units',
} as const;
