// Words for the stages in English, German, French, Portuguese and Spanish; lower case, without accents. Common practice,
// no source.

import type { Stage } from '#planning';

export const stageWords: Readonly<Record<Stage, string>> = {
  beginner:
    'beginner | beg | begin | beginning | beginners | novice | new | starter | anfanger | anfangerin | debutant | debutante | principiante | iniciante | iniciado | iniciacao | inicial',
  elementary:
    'elementary | elem | basic | basics | early | grundstufe | grundlagen | elementaire | elementar | elemental | basico',
  intermediate:
    'intermediate | int | inter | interm | middle | medium | mittelstufe | fortgeschritten | intermediaire | moyen | intermedio | intermediaria | intermediario | medio',
  advanced:
    'advanced | adv | upper | oberstufe | weit fortgeschritten | avance | avancee | avancado | avancada | avanzado | avanzada',
};

/** Words that shade a stage and leave it what it is: `late beginner`, `upper intermediate`. */
export const stageShades =
  'absolute | complete | total | very | early | late | low | lower | mid | middle | high | higher | upper | strong | weak';
