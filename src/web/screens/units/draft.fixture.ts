// A small skill map and a unit to write on, for the editor's tests.

import type { Skill, SkillId, UnitDocument, UnitId } from '#planning';

export const skillId = (name: string) => `skill:${name}` as SkillId;

const skill = (name: string, title: string, restsOn: readonly string[] = [], ongoing = false): Skill => ({
  id: skillId(name),
  title,
  area: 'rhythm',
  stage: 'beginner',
  description: title,
  restsOn: restsOn.map(skillId),
  ongoing,
});

export const skills: readonly Skill[] = [
  skill('beat', 'walks to a steady beat'),
  skill('halves', 'claps twice to each step', ['beat']),
  skill('reads-halves', 'reads two sounds to a beat', ['halves']),
  skill('ease', 'plays at ease', [], true),
];

export const skillsById = new Map(skills.map((one) => [one.id, one]));

export const unit: UnitDocument = {
  format: 'levare-unit/1',
  id: 'unit:two-to-a-step' as UnitId,
  version: 3,
  title: 'Two to a step',
  area: 'rhythm',
  goal: 'clap and read two even sounds to each beat',
  about: 'From the feet up.',
  stages: ['beginner', 'elementary'],
  ages: { from: 6, to: 99 },
  families: ['strings'],
  skills: [skillId('ease'), skillId('halves'), skillId('beat'), skillId('reads-halves')],
  activities: [
    {
      key: 'walk',
      title: 'Walk and clap',
      howTo: 'Walk. Clap.\n\nThen both.',
      minutes: { shortest: 4, usual: 8, longest: 12 },
      develops: [skillId('beat'), skillId('halves')],
      character: 'new',
      variants: [
        {
          ages: { from: 6, to: 9 },
          minutes: { shortest: 3, usual: 6, longest: 9 },
          materials: [{ key: 'short-steps', title: 'Short steps at 100', spec: { tempo: 100 }, seed: 3 }],
          bring: [],
        },
      ],
      materials: [{ key: 'steps', title: 'Steps at 84', spec: { tempo: 84 }, takeHome: 'whenDone' }],
      bring: ['room to walk', 'a drum'],
    },
    {
      key: 'read',
      title: 'Read what you clapped',
      howTo: 'Cards.',
      minutes: { shortest: 5, usual: 10, longest: 15 },
      develops: [skillId('reads-halves')],
      character: 'hard',
      variants: [],
      materials: [],
      bring: [],
    },
  ],
  extensions: [],
  checks: [
    {
      key: 'halves',
      skill: skillId('halves'),
      level: 3,
      lookFor: 'Even, for eight steps.',
      listenFor: [{ kind: 'mostlyValue', value: 'quaver', share: 0.5, others: 1 }],
    },
  ],
  next: ['unit:rests' as UnitId],
};
