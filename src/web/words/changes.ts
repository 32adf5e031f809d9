export const changes = {
  title: 'Changes',
} as const;
