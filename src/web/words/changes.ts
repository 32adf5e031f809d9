export const changes = {
  title: 'Changes',
  lead: 'Newest first. Taking one back is a change itself and can be taken back too.',
  none: 'Every change you make is listed here and can be taken back.',
  columns: { when: 'When', what: 'What', act: 'Take back' },
  undo: 'Undo',
  older: 'Show older changes',
  undone: 'taken back',
  named: (label: string) => `Undo: ${label}`,
} as const;
