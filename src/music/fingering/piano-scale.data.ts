// Standard piano fingerings. Scales: one octave up, right hand then left, from the shared reference table (common practice,
// standard scale manuals; books differ on the first finger of B flat and E flat). Natural and melodic minor take the harmonic
// form's where no thumb falls on a black key. Arpeggios of root-position triads, one octave up: from memory of the same
// manuals. Tonics by key on the keyboard, so that G flat and F sharp are one row.

export const pianoScaleTable = [
  { tonic: 'C', mode: 'major', right: '12312345', left: '54321321' },
  { tonic: 'G', mode: 'major', right: '12312345', left: '54321321' },
  { tonic: 'D', mode: 'major', right: '12312345', left: '54321321' },
  { tonic: 'A', mode: 'major', right: '12312345', left: '54321321' },
  { tonic: 'E', mode: 'major', right: '12312345', left: '54321321' },
  { tonic: 'B', mode: 'major', right: '12312345', left: '43214321' },
  { tonic: 'F', mode: 'major', right: '12341234', left: '54321321' },
  { tonic: 'Bb', mode: 'major', right: '41231234', left: '32143213' },
  { tonic: 'Eb', mode: 'major', right: '31234123', left: '32143213' },
  { tonic: 'Ab', mode: 'major', right: '34123123', left: '32143213' },
  { tonic: 'Db', mode: 'major', right: '23123412', left: '32143213' },
  { tonic: 'Gb', mode: 'major', right: '23412312', left: '43213214' },
  { tonic: 'A', mode: 'minor', right: '12312345', left: '54321321' },
  { tonic: 'E', mode: 'minor', right: '12312345', left: '54321321' },
  { tonic: 'D', mode: 'minor', right: '12312345', left: '54321321' },
  { tonic: 'G', mode: 'minor', right: '12312345', left: '54321321' },
  { tonic: 'C', mode: 'minor', right: '12312345', left: '54321321' },
  { tonic: 'B', mode: 'minor', right: '12312345', left: '43214321' },
  { tonic: 'F', mode: 'minor', right: '12341234', left: '54321321' },
  { tonic: 'F#', mode: 'minor', right: '34123123', left: '43213214' },
  { tonic: 'C#', mode: 'minor', right: '34123123', left: '32143213' },
  { tonic: 'G#', mode: 'minor', right: '34123123', left: '32143213' },
  { tonic: 'Eb', mode: 'minor', right: '31234123', left: '21432132' },
  { tonic: 'Bb', mode: 'minor', right: '41231234', left: '21321432' },
] as const;

export const pianoArpeggioTable = [
  { roots: 'C F G', quality: 'major', right: '1235', left: '5421' },
  { roots: 'D A E B', quality: 'major', right: '1235', left: '5321' },
  { roots: 'F#', quality: 'major', right: '1235', left: '5321' },
  { roots: 'Db Ab Eb', quality: 'major', right: '4124', left: '2142' },
  { roots: 'Bb', quality: 'major', right: '4124', left: '3213' },
  { roots: 'C G F D A E B', quality: 'minor', right: '1235', left: '5421' },
  { roots: 'C# F# G#', quality: 'minor', right: '4124', left: '2142' },
  { roots: 'Bb', quality: 'minor', right: '2312', left: '3213' },
  { roots: 'Eb', quality: 'minor', right: '1235', left: '5421' },
] as const;
