import { words } from '../words/index.ts';
import { Caesura, CheckMark, tie } from './score-block.tsx';
import { TexturedBeam } from './textured-beam.tsx';

const say = words.score;

const box = { x: 2, y: 5, width: 36, height: 11 };

const marks = [
  ['taught', <TexturedBeam key="t" ink={1} taught box={box} />],
  ['planned', <TexturedBeam key="p" ink={1} taught={false} box={box} />],
  ['revisit', <rect key="r" className="beam hollow ink-1" x="2" y="5" width="36" height="11" rx="5.5" />],
  ['extension', <TexturedBeam key="e" ink={1} taught={false} box={box} className="optional" />],
  ['check', <CheckMark key="c" x={24} y={10} />],
  ['setAside', <Caesura key="a" x={20} y={11} />],
  ['pinned', <path key="pin" className="pin" d="M20 6l3.5 6.5h-7z" />],
  ['moved', <path key="m" className="tie" d={tie(6, 34, 8)} />],
  ['deadline', <path key="d" className="deadline" d="M24 2v18M19 6l4 5l-4 5z" />],
  ['shared', <rect key="s" className="beam quiet" x="4" y="8" width="32" height="5" />],
  ['rest', <path key="h" className="legend-rest" d="M6 4v14M34 4v14M6 11h28" />],
  ['now', <line key="n" className="legend-now" x1="20" x2="20" y1="1" y2="21" />],
] as const;

/** How to read the score, in small signs; on paper it stands beneath it. */
export function ScoreLegend() {
  return (
    <details className="score-legend">
      <summary>{say.howToRead}</summary>
      <ul>
        {marks.map(([word, drawing]) => (
          <li key={word}>
            <svg
              className="score-system"
              width="40"
              height="22"
              viewBox="0 0 40 22"
              aria-hidden="true"
              focusable="false"
            >
              {drawing}
            </svg>
            {say.legend[word]}
          </li>
        ))}
      </ul>
    </details>
  );
}
