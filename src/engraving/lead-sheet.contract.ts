// A lead sheet written by hand, so that engraving is tested without our own MusicXML writer.

const chords = [
  { step: 'B', alter: -1, kind: 'dominant', text: '7' },
  { step: 'E', alter: -1, kind: 'major-seventh', text: 'maj7' },
  { step: 'F', alter: 1, kind: 'half-diminished', text: 'm7♭5' },
  { step: 'C', alter: 0, kind: 'minor-seventh', text: 'm7' },
] as const;

const opening = `<attributes><divisions>1</divisions><key><fifths>-2</fifths></key><time><beats>4</beats><beat-type>4</beat-type></time><clef><sign>G</sign><line>2</line></clef><transpose><diatonic>-5</diatonic><chromatic>-9</chromatic></transpose></attributes><direction placement="above"><direction-type><metronome><beat-unit>quarter</beat-unit><per-minute>112</per-minute></metronome></direction-type><sound tempo="112"/></direction>`;

/** Crotchets in four-four, a chord to the bar, four bars to a system. */
export function leadSheet({
  bars,
  title = 'Lead sheet',
}: {
  readonly bars: number;
  readonly title?: string;
}): string {
  const measures = Array.from({ length: bars }, (_, i) => {
    const chord = chords[i % 4] ?? chords[0];
    const notes = ['C', 'E', 'G', 'B']
      .map(
        (step) =>
          `<note><pitch><step>${step}</step>${step === 'E' || step === 'B' ? '<alter>-1</alter>' : ''}<octave>4</octave></pitch><duration>1</duration><voice>1</voice><type>quarter</type></note>`,
      )
      .join('');
    const root = `<root><root-step>${chord.step}</root-step>${chord.alter === 0 ? '' : `<root-alter>${chord.alter}</root-alter>`}</root>`;
    return `<measure number="${i + 1}">${i > 0 && i % 4 === 0 ? '<print new-system="yes"/>' : ''}${i === 0 ? opening : ''}<harmony>${root}<kind text="${chord.text}">${chord.kind}</kind></harmony>${notes}</measure>`;
  }).join('');
  const safe = title.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
  return `<?xml version="1.0" encoding="UTF-8"?><score-partwise version="4.0"><work><work-title>${safe}</work-title></work><part-list><score-part id="P1"><part-name print-object="no">Alto saxophone</part-name></score-part></part-list><part id="P1">${measures}</part></score-partwise>`;
}
