// Chord symbols as Verovio 6.3 reads them: it prints degrees that ask not to be printed, and the root of a chord that is
// none. Both are put so that it prints what the document means.

/** `7♭9` without a second `(♭9)`; N.C. for no chord. Takes and gives MusicXML. */
export function mendHarmony(musicXml: string): string {
  return musicXml.replace(/<harmony\b[\s\S]*?<\/harmony>/g, (harmony) => {
    const bare = harmony.replace(/<degree\b[^>]*print-object="no"[\s\S]*?<\/degree>/g, '');
    const none = /<kind\b[^>]*text="([^"]*)"[^>]*>none<\/kind>/.exec(bare);
    if (none === null) return bare;
    const words = `<numeral><numeral-root text="${none[1]}">1</numeral-root></numeral>`;
    return bare.replace(/<root>[\s\S]*?<\/root>/, () => words);
  });
}
