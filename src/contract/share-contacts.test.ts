import { expect, test } from 'vitest';
import { isSamePerson, joinContacts, withoutShared } from './share-contacts.ts';

const contact = (name: string, phone = '', email = '') => ({ name, relation: '', phone, email });

test('one name is one person, accents and case aside; without a name a telephone or an address tells', () => {
  expect(isSamePerson(contact('Zoë Reis', '1'), contact(' zoe  reis', '2'))).toBe(true);
  expect(isSamePerson(contact('Zoe Reis', '1'), contact('Eva Reis', '1'))).toBe(false);
  expect(isSamePerson(contact('', '+351 210'), contact('Eva', '00351210'))).toBe(true);
  expect(isSamePerson(contact('', '', 'A@b.cd '), contact('', '', 'a@b.cd'))).toBe(true);
  expect(isSamePerson(contact(''), contact(''))).toBe(false);
});

test('shared is what was shared, and who stands in two lists; of one person the first counts', () => {
  const [eva, mo, jon] = [contact('Eva', '1'), contact('Mo'), contact('Jon')];
  const otherEva = contact('eva', '2');
  expect(joinContacts([mo], [[eva, jon], [otherEva]])).toEqual([mo, eva]);
  expect(joinContacts([], [[eva, otherEva], []])).toEqual([]);
  expect(withoutShared([jon, otherEva], [eva])).toEqual([jon]);
});
