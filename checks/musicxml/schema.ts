// The W3C schema of MusicXML 4.0 as a validator: see README.md.
import { readFileSync } from 'node:fs';
import {
  XmlBufferInputProvider,
  XmlDocument,
  XmlValidateError,
  XsdValidator,
  xmlRegisterInputProvider,
} from 'libxml2-wasm';

const read = (file: string) => readFileSync(new URL(`./data/${file}`, import.meta.url));

// The schema imports two others by address; they stand beside it.
xmlRegisterInputProvider(
  new XmlBufferInputProvider({
    'http://www.musicxml.org/xsd/xml.xsd': read('xml.xsd'),
    'http://www.musicxml.org/xsd/xlink.xsd': read('xlink.xsd'),
  }),
);
const schema = XmlDocument.fromBuffer(read('musicxml.xsd'), {
  url: 'http://www.musicxml.org/xsd/musicxml.xsd',
});
const validator = XsdValidator.fromDoc(schema);

/** What the schema, and the rule on part ids that libxml2 does not see, find wrong; empty when valid. */
export function schemaFaults(xml: string): readonly string[] {
  const document = XmlDocument.fromString(xml);
  const faults: string[] = [];
  try {
    validator.validate(document);
  } catch (error) {
    if (!(error instanceof XmlValidateError)) throw error;
    faults.push(...error.details.map(({ message, line }) => `${line}: ${message.trim()}`));
  }
  const find = (path: string) =>
    document
      .find(path)
      .map((node) => node.content)
      .join();
  const listed = find('/score-partwise/part-list/score-part/@id');
  const written = find('/score-partwise/part/@id');
  if (listed !== written) faults.push(`parts ${written} for score-parts ${listed}`);
  document.dispose();
  return faults;
}

/**
 * Measures whose voices, summed from `<duration>`s that are no chord's second head, do not all last the same. Read from the
 * text itself: thousands of sheets are quick that way.
 */
export function unfilledVoices(xml: string): readonly string[] {
  return (xml.match(/<measure [\s\S]*?<\/measure>/g) ?? []).flatMap((measure) => {
    const lasts = new Map<string, number>();
    for (const [, tag, inside = ''] of measure.matchAll(/<(note|backup)\b[^>]*>([\s\S]*?)<\/\1>/g)) {
      if (inside.includes('<chord/>') || inside.includes('<grace')) continue;
      const duration = Number(/<duration>(\d+)</.exec(inside)?.[1]);
      const voice = /<voice>(\d+)</.exec(inside)?.[1] ?? '';
      if (tag === 'backup') lasts.set(`back ${lasts.size}`, duration);
      else lasts.set(voice, (lasts.get(voice) ?? 0) + duration);
    }
    return new Set(lasts.values()).size === 1 ? [] : [`${measure.slice(0, 30)}: ${[...lasts].join(' ')}`];
  });
}
