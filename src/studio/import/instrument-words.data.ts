// Names of instruments as teachers write them, in English, German, French, Portuguese and Spanish; lower case, without
// accents. Common practice, no source. A word that may mean several stands under `unclear`, with what to ask.

import type { InstrumentId } from '#music';

export const instrumentWords: Readonly<Record<InstrumentId, string>> = {
  piccolo: 'piccolo | piccolo flute | piccoloflote | flautim | flautin | petite flute',
  flute:
    'flute | fl | concert flute | transverse flute | floete | flote | querflote | querfloete | flute traversiere | flauta transversal | flauta travesera | flauta',
  oboe: 'oboe | ob | hautbois',
  cor_anglais: 'cor anglais | english horn | englischhorn | corne ingles | corno ingles',
  clarinet_bb:
    'clarinet | cl | clarinet in bb | bb clarinet | b flat clarinet | klarinette | b-klarinette | clarinette | clarinete',
  clarinet_a: 'a clarinet | clarinet in a | a-klarinette',
  bass_clarinet: 'bass clarinet | bassklarinette | clarinette basse | clarinete baixo | clarinete bajo',
  bassoon: 'bassoon | bsn | fagott | basson | fagote | fagot',
  soprano_sax:
    'soprano sax | soprano saxophone | sopransaxophon | sopransaxofon | saxophone soprano | saxofone soprano | saxofon soprano',
  alto_sax:
    'alto sax | alto saxophone | eb sax | altsaxophon | altsaxofon | saxophone alto | saxofone alto | saxofon alto',
  tenor_sax:
    'tenor sax | tenor saxophone | tenorsaxophon | tenorsaxofon | saxophone tenor | saxofone tenor | saxofon tenor',
  baritone_sax:
    'baritone sax | bari sax | baritone saxophone | baritonsaxophon | saxophone baryton | saxofone baritono | saxofon baritono',
  trumpet_bb:
    'trumpet | tpt | trp | bb trumpet | b flat trumpet | trumpet in bb | trompete | trompette | trompeta',
  cornet_bb: 'cornet | bb cornet | kornett | cornet a pistons | corneta | cornetim',
  flugelhorn_bb: 'flugelhorn | fluegelhorn | bugle | fliscorne | fliscorno',
  horn_f: 'horn | hn | french horn | horn in f | f horn | waldhorn | cor | cor d harmonie | trompa',
  trombone: 'trombone | tbn | tenor trombone | posaune | trombon',
  euphonium_bc: 'euphonium bass clef | bass clef euphonium | euphonium | eufonio',
  euphonium_tc: 'euphonium treble clef | treble clef euphonium | baritone horn | tenorhorn | bariton',
  tuba: 'tuba',
  violin: 'violin | vln | vn | fiddle | geige | violine | violon | violino | violin clasico',
  viola: 'viola | vla | bratsche | alto a cordes | violeta',
  cello: 'cello | vc | vcl | violoncello | violoncelle | violoncelo | chelo | violonchelo',
  double_bass:
    'double bass | db | upright bass | string bass | contrabass | kontrabass | contrebasse | contrabaixo | contrabajo',
  guitar:
    'guitar | gtr | classical guitar | acoustic guitar | electric guitar | gitarre | e-gitarre | konzertgitarre | guitare | guitarra | violao | viola classica | guitarra classica | guitarra clasica',
  bass_guitar:
    'bass guitar | electric bass | e-bass | bassgitarre | guitare basse | basse electrique | baixo eletrico | baixo | bajo electrico | bajo',
  ukulele: 'ukulele | uke | ukelele | cavaquinho ukulele',
  piano: 'piano | pno | keyboard | pianoforte | klavier | flugel | teclado',
  recorder_descant:
    'recorder | descant recorder | soprano recorder | blockflote | blockfloete | sopranblockflote | flute a bec | flute a bec soprano | flauta de bisel | flauta doce | flauta dulce | flauta de pico',
  recorder_treble:
    'treble recorder | alto recorder | altblockflote | altblockfloete | flute a bec alto | flauta de bisel alto | flauta dulce alto',
  recorder_tenor:
    'tenor recorder | tenorblockflote | tenorblockfloete | flute a bec tenor | flauta de bisel tenor | flauta dulce tenor',
  vibraphone: 'vibraphone | vibes | vibraphon | vibrafone | vibrafono',
  marimba: 'marimba | marimbaphon',
  xylophone: 'xylophone | xylophon | xilofone | xilofono',
  glockenspiel: 'glockenspiel | bells | carillon | jogo de sinos',
  voice_child: 'child voice | childrens voice | treble voice | kinderstimme | voix d enfant | voz infantil',
  voice_soprano: 'soprano | soprano voice | sopran',
  voice_mezzo: 'mezzo | mezzo soprano | mezzo-soprano | mezzosopran | meio-soprano | mezzosoprano',
  voice_alto: 'alto voice | contralto | alt',
  voice_tenor: 'tenor | tenor voice',
  voice_baritone: 'baritone voice | baritone singer | baryton | baritono',
  voice_bass: 'bass voice | basse chantante | baixo voz',
};

export const unclearInstruments: Readonly<Record<string, string>> = {
  'sax | saxophone | saxophon | saxofon | saxofone': 'soprano, alto, tenor or baritone saxophone',
  'bass | basse': 'double bass, bass guitar or bass voice',
  baritone: 'baritone horn, baritone saxophone or baritone voice',
  alto: 'alto saxophone, treble recorder or alto voice',
  'voice | singing | vocals | vocal | gesang | singen | stimme | chant | voix | canto | voz':
    'child, soprano, mezzo-soprano, alto, tenor, baritone or bass voice',
  'percussion | drums | drum kit | schlagzeug | percussions | batterie | bateria | percussao | percusion':
    'vibraphone, marimba, xylophone or glockenspiel',
  'strings | woodwind | brass': 'which instrument',
};
