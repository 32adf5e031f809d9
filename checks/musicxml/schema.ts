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

/** Text of every element an XPath finds, or of an attribute. */
export type Find = (path: string) => readonly string[];

/** Reads a document, lets `look` search it, and lets it go. */
export function withDocument<T>(xml: string, look: (find: Find, document: XmlDocument) => T): T {
  const document = XmlDocument.fromString(xml);
  try {
    return look((path) => document.find(path).map((node) => node.content), document);
  } finally {
    document.dispose();
  }
}

/** What the schema, and the rule on part ids that libxml2 does not see, find wrong; empty when valid. */
export function schemaFaults(xml: string): readonly string[] {
  return withDocument(xml, (find, document) => {
    const faults: string[] = [];
    try {
      validator.validate(document);
    } catch (error) {
      if (!(error instanceof XmlValidateError)) throw error;
      faults.push(...error.details.map(({ message, line }) => `${line}: ${message.trim()}`));
    }
    const listed = find('/score-partwise/part-list/score-part/@id');
    const written = find('/score-partwise/part/@id');
    if (listed.join() !== written.join())
      faults.push(`parts ${written.join()} for score-parts ${listed.join()}`);
    return faults;
  });
}
