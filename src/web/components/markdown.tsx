// How-to text: Markdown without HTML, headings kept below the page's own.

import Markdown, { type MarkdownToJSX } from 'markdown-to-jsx/react';
import './markdown.css';

export interface MarkdownTextProps {
  readonly text: string;
}

function PictureName({ alt }: { readonly alt?: string }) {
  return <em>{alt}</em>;
}

const options: MarkdownToJSX.Options = {
  disableParsingRawHTML: true,
  forceBlock: true,
  overrides: {
    h1: { component: 'h3' as const },
    h2: { component: 'h3' },
    h3: { component: 'h4' },
    a: { props: { target: '_blank', rel: 'noreferrer noopener' } },
    // A picture from elsewhere would reach out of the teacher's machine.
    img: { component: PictureName },
  },
};

export function MarkdownText({ text }: MarkdownTextProps) {
  return (
    <div className="markdown">
      <Markdown options={options}>{text}</Markdown>
    </div>
  );
}
