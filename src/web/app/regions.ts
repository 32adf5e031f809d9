// Time zones and locales to choose from, and what this browser suggests.

/** IANA zones this browser knows, its own first guess among them. */
export function listTimeZones(): readonly string[] {
  const known = Intl.supportedValuesOf('timeZone');
  const own = guessTimeZone();
  return known.includes(own) ? known : [own, ...known];
}

/** The zone of this browser, `Europe/Lisbon`; `UTC` where it says none. */
export function guessTimeZone(): string {
  return Intl.DateTimeFormat().resolvedOptions().timeZone || 'UTC';
}

/** The locale of this browser, `en-GB`. */
export function guessLocale(): string {
  return navigator.language || 'en-GB';
}

const tags = [
  'en-GB',
  'en-IE',
  'en-US',
  'en-CA',
  'en-AU',
  'en-NZ',
  'en-ZA',
  'en-IN',
  'cs-CZ',
  'da-DK',
  'de-AT',
  'de-CH',
  'de-DE',
  'es-ES',
  'es-MX',
  'fi-FI',
  'fr-CA',
  'fr-FR',
  'hu-HU',
  'is-IS',
  'it-IT',
  'ja-JP',
  'ko-KR',
  'nb-NO',
  'nl-NL',
  'pl-PL',
  'pt-BR',
  'pt-PT',
  'sv-SE',
  'tr-TR',
];

/** Locales for dates and numbers with their names in English; `also` is added where it is not among them. */
export function listLocales(
  also: readonly string[],
): readonly { readonly value: string; readonly label: string }[] {
  const names = new Intl.DisplayNames('en-GB', { type: 'language' });
  const nameOf = (tag: string) => {
    try {
      return names.of(tag) ?? tag;
    } catch {
      return tag;
    }
  };
  return [...new Set([...tags, ...also])]
    .map((value) => ({ value, label: nameOf(value) }))
    .sort((a, b) => a.label.localeCompare(b.label, 'en-GB'));
}
