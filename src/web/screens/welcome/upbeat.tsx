// The welcome's picture: a staff, one note before the first barline, and the bars that wait for it.

const lines = [20, 32, 44, 56, 68];
const bars = [210, 470, 730, 990];

export function Upbeat() {
  return (
    <svg className="upbeat" viewBox="0 0 1000 100" preserveAspectRatio="xMinYMid slice" aria-hidden="true">
      <g className="upbeat-staff">
        {lines.map((y) => (
          <line key={y} x1="0" x2="1000" y1={y} y2={y} />
        ))}
        {bars.map((x) => (
          <line key={x} x1={x} x2={x} y1="20" y2="68" />
        ))}
      </g>
      <g className="upbeat-note">
        <ellipse cx="150" cy="62" rx="8.6" ry="6.1" transform="rotate(-24 150 62)" />
        <path d="M157.4 60V14" />
        <path className="upbeat-flag" d="M157.4 14c2 11 15 14 11 31 0-10-6-14-11-17z" />
      </g>
    </svg>
  );
}
