export const welcome = {
  title: 'Welcome',
} as const;
