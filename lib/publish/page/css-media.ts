/**
 * How pages look on paper and where the reader has forced colours.
 *
 * Paper holds what is unfolded on the screen: code and the numbers of figures print when the reader has opened them, so
 * that a field guide stays as short as it was written. A compact page goes on as few sheets as can be read.
 *
 * @module
 */

/** Styles of other media. */
export const MEDIA_CSS = `
@media (forced-colors:active){
:root{--paper:Canvas;--ink:CanvasText;--ink-soft:CanvasText;--link:LinkText;--edge:CanvasText;--rule:CanvasText}
.theme{display:none}
pre{border:1px solid CanvasText}
.drawing,.mark{forced-color-adjust:none}
.drawing{--paper:#ffffff;--ink:#1a1e23;--ink-soft:#474f58;color:#1a1e23;color-scheme:light}
}
@page{size:A4;margin:18mm 20mm 20mm;@bottom-right{content:counter(page) " / " counter(pages);font:9pt "Source Sans 3",sans-serif}}
@media print{
:root,:root:has(#theme-dark:checked){color-scheme:light;--paper:#fff}
html{font-size:10.5pt}
body{line-height:1.42}
body{--measure:none}
main,.site,.stamp,main>article{max-width:none;padding-inline:0}
.theme,.skip,.pages,a.back,.downloads{display:none}
h2{margin-top:1.8em}
a{color:inherit}
button.value{text-decoration:none}
main a[href^="http"]::after{content:" (" attr(href) ")";overflow-wrap:anywhere}
figure.figure,figure.breakout{width:auto;max-width:150mm;margin-inline:0;break-inside:avoid}
figure .wide,figure.breakout .wide{display:block}
figure .narrow[hidden],figure.breakout .narrow[hidden]{display:none}
figure.table{break-inside:auto}
.scroll{overflow:visible}
table{font-size:.9em}
figure.table.long,details.numbers.long .scroll{width:auto;margin-inline:0}
.long table{min-width:100%}
td.words,th.words{min-width:7rem}
.long table{font-size:.78em}
.long th,.long td{padding-block:.3rem;padding-inline:.4rem}
figure.table figcaption,details.numbers p{max-width:none}
thead{display:table-header-group}
details:not([open]){display:none}
summary{list-style:none}
details.code pre{margin-right:0}
pre.report{margin-right:0;white-space:pre-wrap}
pre{border:1px solid var(--rule);background:none}
p,li{orphans:3;widows:3}
.box{background:none;box-decoration-break:clone;-webkit-box-decoration-break:clone}
.answer{break-inside:auto}
.answer h2,.answer h3,.answer .verdict,figcaption:first-child{break-after:avoid}
.answer p,.answer .strip,thead{break-inside:avoid}
body.compact{page:compact;font-size:9.3pt;line-height:1.32}
html:has(body.compact){font-size:9.3pt}
.compact h1{font-size:1.7em;margin:.2rem 0 .4rem}
.compact h2{margin:1em 0 .3em}
.compact p,.compact ul,.compact ol{margin-bottom:.5em}
.compact li+li{margin-top:.1em}
.compact .box{margin:.7em 0;padding:.5rem .8rem}
.compact figure{margin:.7em 0}
.compact figure.figure{max-width:115mm;margin-inline:auto}
.compact th,.compact td{padding-block:.14rem;line-height:1.25}
.compact .site,.compact footer{display:none}
}
@page compact{margin:11mm 15mm 13mm}
`;
