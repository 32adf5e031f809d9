export const studentsImport = {
  title: 'Import students',
} as const;
