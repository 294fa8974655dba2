/**
 * How the parts of a page look: header, answer box, figures, tables, findings, cautions, folded code, stamp, cards.
 *
 * @module
 */

/** Styles of parts. */
export const PARTS_CSS = `
.site{display:flex;flex-wrap:wrap;justify-content:space-between;align-items:center;gap:.4rem 1rem;padding-block:.8rem}
.site .home{font-weight:600;color:var(--ink);text-decoration:none;padding:.2rem 0}
.site .home:hover{text-decoration:underline}
.theme{display:flex;gap:.25rem;margin:0;padding:0;border:0;font-size:.9rem}
.theme legend{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.theme label{position:relative;padding:.2rem .55rem;border:1px solid transparent;border-radius:4px;min-height:1.6rem;cursor:pointer;color:var(--ink-soft)}
.theme input{position:absolute;inset:0;opacity:0;margin:0;cursor:pointer}
.theme label:has(:checked){border-color:var(--edge);color:var(--ink)}
.theme label:has(:focus-visible){outline:3px solid var(--link);outline-offset:2px}
.theme label:hover{color:var(--ink);text-decoration:underline}
.box{margin:1.6em 0;padding:1rem 1.1rem;border:1px solid var(--edge);border-left-width:6px;border-radius:4px;background:var(--tint);break-inside:avoid}
.box p{margin-bottom:.65em}
.box>:first-child{margin-top:0}
.box>:last-child{margin-bottom:0}
.answer h2,.answer h3{font-size:1rem;font-weight:400;color:var(--ink-soft);margin:0 0 .4em}
.answer .verdict{font-size:1.35em;font-weight:600;line-height:1.3;margin-bottom:.55em;text-wrap:balance}
.answer[data-verdict="cannot-tell-yet"],.answer[data-verdict="refused"]{border-style:dashed;border-color:var(--ink-soft);background:none}
.answer .more{font-size:.93rem;line-height:1.45;margin-bottom:.5em}
.answer .rests,.answer .downloads{font-size:.9rem;line-height:1.45;color:var(--ink-soft)}
div.strip{margin:0 0 1em}
.strip svg{display:block;max-width:100%;height:auto;overflow:visible}
svg.mark{width:.85em;height:.85em;vertical-align:-.08em;overflow:visible;color:var(--ink-soft)}
.caution{border-color:var(--caution-edge);background:var(--caution-tint)}
figure{margin:1.8em 0}
figure.figure{break-inside:avoid}
svg.drawing{display:block;max-width:100%;height:auto}
figure .wide,figure .narrow{overflow:hidden}
figure .narrow[hidden]{display:none}
@container (max-width:34rem){figure .wide{display:none}figure .narrow[hidden]{display:block}}
figure.breakout{width:min(100cqi,42.5rem);margin-inline:calc((100% - min(100cqi,42.5rem))/2)}
@container (max-width:42rem){figure.breakout .wide{display:none}figure.breakout .narrow[hidden]{display:block}figure.breakout{width:auto;margin-inline:0}}
figcaption{font-size:.9rem;line-height:1.45;color:var(--ink-soft);margin-top:.5rem}
figcaption b{color:var(--ink)}
figure.table figcaption{margin:0 auto .5rem;max-width:var(--measure)}
figure.table.long,details.numbers.long .scroll{--reach:min(100cqi,60rem);width:var(--reach);margin-inline:calc((100% - var(--reach))/2)}
.long table{min-width:min(100%,var(--measure));margin-inline:auto}
td.words,th.words{min-width:10rem}
.downloads{white-space:normal}
.scroll{overflow-x:auto;margin-bottom:1em}
table{border-collapse:collapse;font-size:.94em;line-height:1.35;font-variant-numeric:tabular-nums lining-nums;min-width:100%}
th,td{padding:.4rem .75rem;text-align:left;vertical-align:baseline;border-bottom:1px solid var(--rule)}
th:first-child,td:first-child{padding-left:0}
th:last-child,td:last-child{padding-right:0}
thead th{font-weight:600;border-bottom:2px solid var(--edge);vertical-align:bottom}
thead .unit{font-weight:400;white-space:nowrap}
tbody th{font-weight:400}
th:has(.mark),td:has(.mark){white-space:nowrap}
.number{text-align:right}
tr{break-inside:avoid}
.long table{font-size:.86em}
.long th,.long td{padding-inline:.5rem}
.long th:first-child,.long td:first-child{padding-left:0}
.long th:last-child,.long td:last-child{padding-right:0}
details{margin:0 0 1em}
details+details{margin-top:-.6em}
summary{display:list-item;font-size:.9rem;line-height:1.45;color:var(--ink-soft);cursor:pointer;padding:.15rem 0}
summary:hover{color:var(--ink);text-decoration:underline}
details.numbers p{max-width:var(--measure);font-size:.9rem;line-height:1.45;color:var(--ink-soft);margin:.4rem 0 .5rem}
details.rows summary{max-width:var(--measure);margin-inline:auto}
figure+details.numbers,figure+details.code{margin-top:-1.3em}
details.code pre{margin:.4rem min(0px,max(-16.5rem,(31.5rem - 100cqi)/2)) 0 0}
ul.findings{list-style:none;padding:0}
ul.findings li{padding:.5rem 0 .5rem .8rem;border-left:3px solid var(--edge);break-inside:avoid}
.where{color:var(--ink-soft)}
.picture img{display:block;padding:.5rem;background:#fff}
.foreign table{min-width:0}
.pages{display:flex;justify-content:space-between;gap:1.5rem;margin-top:3rem;padding-block:.8rem;font-size:.9rem}
.pages a{padding:.2rem 0}
.pages .next{margin-left:auto;text-align:right}
footer{border-top:1px solid var(--rule);margin-top:2.5rem;color:var(--ink-soft);font-size:.9rem;line-height:1.45}
.stamp{padding-block:1rem 2rem}
.stamp h2{font-size:1rem;color:var(--ink);margin:0 0 .4rem}
.stamp{break-inside:avoid}
dl{display:grid;grid-template-columns:minmax(6.5rem,auto) 1fr;gap:.3rem 1rem}
dt{font-weight:600}
dd{margin:0;min-width:0}
.stamp dt{font-weight:400}
.sum{font-family:"Source Code Pro",ui-monospace,monospace;font-size:.86em;overflow-wrap:anywhere}
@media (max-width:34rem){dl{grid-template-columns:1fr;gap:0}dd{margin-bottom:.5rem}table{font-size:.875rem}}
.lead{font-size:1.1em;max-width:38rem}
ul.cards{list-style:none;padding:0;margin:2rem 0;display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,17rem),1fr));gap:1.1rem}
.cards li{position:relative;margin:0;padding:1rem 1.1rem;border:1px solid var(--edge);border-radius:4px;background:var(--tint);display:flex;flex-direction:column;break-inside:avoid}
.cards li:hover{border-color:var(--link)}
.cards h2{font-size:1.15em;margin:0 0 .5em}
.cards h2 a::after{content:"";position:absolute;inset:0}
.cards p{margin:0 0 .6em}
.cards .tag{margin:auto 0 0;font-size:.9rem;color:var(--ink-soft)}
.cards li[data-verdict="cannot-tell-yet"],.cards li[data-verdict="refused"]{border-style:dashed}
`;
