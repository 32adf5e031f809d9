import type { Stage } from '#planning';

export const stageNames: Readonly<Record<Stage, string>> = {
  beginner: 'Beginner',
  elementary: 'Elementary',
  intermediate: 'Intermediate',
  advanced: 'Advanced',
};
