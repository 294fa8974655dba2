/**
 * How live figures look: controls, what they stand at, and the summary below them.
 *
 * @module
 */

/** Styles of pages that hold a live figure. */
export const LIVE_CSS = `
.controls{margin:1rem 0 .8rem;padding:.4rem 1rem 1rem;border:1px solid var(--edge);border-radius:4px;display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,11.5rem),1fr));gap:.5rem 1.6rem;font-size:.9rem;line-height:1.45}
.controls legend{padding-inline:.4rem;margin-inline-start:-.4rem;font-weight:600}
.control{display:grid;grid-template-columns:auto 1fr auto;gap:0 .5rem;align-items:center}
.control label{grid-column:1/3}
.control output{min-width:7ch;text-align:right;white-space:nowrap;font-variant-numeric:tabular-nums lining-nums}
.control input{width:100%;height:1.75rem;margin:.15rem 0;accent-color:var(--link)}
.control small{font-size:.9em;font-variant-numeric:tabular-nums lining-nums;color:var(--ink-soft)}
.controls button{grid-column:1/-1;justify-self:start;font:inherit;padding:.3rem .8rem;border:1px solid var(--edge);border-radius:4px;background:var(--tint);color:var(--ink);cursor:pointer}
.controls button:hover{border-color:var(--link)}
.controls button:focus-visible{outline:3px solid var(--link);outline-offset:2px}
.summary{font-size:.95rem;line-height:1.45;font-variant-numeric:tabular-nums lining-nums}
.summary p{margin:0 0 .4em}
@media print{.controls{display:none}}
`;
