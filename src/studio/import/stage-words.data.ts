// Words for the stages in English, German, French, Portuguese and Spanish; lower case, without accents. Common practice,
// no source.

import type { Stage } from '#planning';

export const stageWords: Readonly<Record<Stage, string>> = {
  beginner:
    'beginner | beginning | beginners | novice | new | starter | anfanger | anfangerin | debutant | debutante | principiante | iniciante | iniciado | iniciacao | inicial',
  elementary:
    'elementary | basic | basics | early | grundstufe | grundlagen | elementaire | elementar | elemental | basico',
  intermediate:
    'intermediate | middle | medium | mittelstufe | fortgeschritten | intermediaire | moyen | intermedio | intermediaria | intermediario | medio',
  advanced:
    'advanced | upper | oberstufe | weit fortgeschritten | avance | avancee | avancado | avancada | avanzado | avanzada',
};
