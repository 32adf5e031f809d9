// XML as text: elements, attributes and escapes.

export type Attributes = Readonly<Record<string, string | number | null>>;

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
// XML 1.0 has no place for control characters but tab and line ends, nor for half a surrogate pair.
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is taken out
const forbidden = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/gu;

/** Letters, digits and the like need no second look; most text is that. */
const plain = /^[\w .,/-]*$/;

/** Text as it stands in XML. `Tea & "cake"` → `Tea &amp; &quot;cake&quot;` */
export function escapeXml(text: string): string {
  if (plain.test(text)) return text;
  return text.replace(forbidden, '').replace(/[&<>"]/g, (c) => escapes[c] ?? c);
}

/** An element with attributes (null is left out) and children, which are XML already. */
export function element(name: string, attributes: Attributes, ...children: readonly string[]): string {
  let open = `<${name}`;
  for (const [key, value] of Object.entries(attributes)) {
    if (value !== null) open += ` ${key}="${escapeXml(String(value))}"`;
  }
  const inside = children.join('');
  return inside === '' ? `${open}/>` : `${open}>${inside}</${name}>`;
}

/** An element around plain text or a number. `textElement('step', 'C')` → `<step>C</step>` */
export function textElement(name: string, text: string | number, attributes: Attributes = {}): string {
  return element(name, attributes, escapeXml(String(text)));
}
