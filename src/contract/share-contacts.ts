// Which contacts siblings share. The same person stands once: what a name, a telephone or an e-mail address tells.

import type { ContactView } from './view/students.ts';

const plain = (name: string) =>
  name.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replace(/\s+/g, ' ').trim();
const digits = (phone: string) => phone.replace(/\D/g, '').replace(/^00/, '');

/** Whether both reach by the same telephone or e-mail address. */
export function isSameReach(a: ContactView, b: ContactView): boolean {
  const phone = digits(a.phone);
  const email = a.email.trim().toLowerCase();
  return (
    (phone !== '' && phone === digits(b.phone)) || (email !== '' && email === b.email.trim().toLowerCase())
  );
}

/** Whether two contacts are one person: of one name, or, where a name is missing, with the same telephone or e-mail. */
export function isSamePerson(a: ContactView, b: ContactView): boolean {
  const [one, other] = [plain(a.name), plain(b.name)];
  return one !== '' && other !== '' ? one === other : isSameReach(a, b);
}

/** The contacts of a list that are not among the shared ones. */
export const withoutShared = (
  own: readonly ContactView[],
  shared: readonly ContactView[],
): readonly ContactView[] => own.filter((contact) => !shared.some((one) => isSamePerson(one, contact)));

/**
 * What siblings share: the contacts shared already, and whoever stands in two of the lists. Of one person the first
 * contact counts.
 */
export function joinContacts(
  shared: readonly ContactView[],
  lists: readonly (readonly ContactView[])[],
): readonly ContactView[] {
  const joined: ContactView[] = [];
  const add = (contact: ContactView) => {
    if (!joined.some((one) => isSamePerson(one, contact))) joined.push(contact);
  };
  shared.forEach(add);
  for (const list of lists)
    for (const contact of list)
      if (lists.some((other) => other !== list && other.some((one) => isSamePerson(one, contact))))
        add(contact);
  return joined;
}
