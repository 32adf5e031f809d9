// A form that is sent with faults in it leads the hand to the first field to mend.

const faulty = ['input', 'textarea', 'select']
  .flatMap((field) => [`${field}[aria-invalid="true"]`, `[aria-invalid="true"] ${field}`])
  .join(', ');

/** Watches every form of the page; returns how to stop. */
export function startLeadingToFaults(): () => void {
  const lead = (event: SubmitEvent) => {
    const form = event.target;
    // The faults are drawn first, and rows that hold them opened.
    requestAnimationFrame(() => {
      const field = form instanceof HTMLFormElement ? form.querySelector<HTMLElement>(faulty) : null;
      field?.focus();
      field?.scrollIntoView({ block: 'center' });
    });
  };
  document.addEventListener('submit', lead);
  return () => document.removeEventListener('submit', lead);
}
