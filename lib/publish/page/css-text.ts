/**
 * How running text looks: sizes, column, headings, code, formulas, notes.
 *
 * @module
 */

/** Styles of text. */
export const TEXT_CSS = `
*{box-sizing:border-box}
html{font-size:clamp(106.25%,100% + .3vw,118.75%);background:var(--paper);color:var(--ink);-webkit-text-size-adjust:100%;text-size-adjust:100%}
@media (prefers-reduced-motion:no-preference){html{scroll-behavior:smooth}}
body{margin:0;font-family:"Source Sans 3","Lakeproof Math",system-ui,sans-serif;font-size:1rem;line-height:1.55;overflow-wrap:break-word}
body{--measure:27.5rem}
.site,.stamp,.pages{max-width:calc(var(--measure) + 2rem);margin-inline:auto;padding-inline:1rem}
main{container-type:inline-size;padding-inline:1rem;outline:none}
main>article{max-width:var(--measure);margin-inline:auto}
body.index .site,body.index .stamp{max-width:62rem}
body.index main>article{max-width:60rem}
h1,h2,h3,h4{font-weight:600;line-height:1.2;text-wrap:balance;break-after:avoid}
h1{font-size:clamp(1.75em,1.3em + 2cqi,2.25em);margin:1.2rem 0 .8rem}
h2{font-size:1.4em;margin:2.6em 0 .55em}
h3{font-size:1.15em;margin:1.9em 0 .5em}
h4{font-size:1em;margin:1.7em 0 .4em}
p,ul,ol,dl,blockquote{margin:0 0 1em}
ul,ol{padding-left:1.4em}
li+li{margin-top:.3em}
a{color:var(--link);text-decoration-thickness:.07em;text-underline-offset:.15em}
a:hover{text-decoration-thickness:.13em}
a:focus-visible,summary:focus-visible,input:focus-visible,.scroll:focus-visible,pre:focus-visible,main:focus-visible{outline:3px solid var(--link);outline-offset:2px;border-radius:2px}
a.anchor{color:inherit;text-decoration:none}
a.anchor:hover::after,a.anchor:focus-visible::after{content:" #"/"";color:var(--ink-soft);font-weight:400}
:target{scroll-margin-top:1rem}
h2:target,h3:target,h4:target,li:target,.equation:target,figcaption:target{background:var(--target)}
strong,b{font-weight:600}
blockquote{margin-inline:0;padding-left:1rem;border-left:3px solid var(--rule);color:var(--ink-soft)}
blockquote.question{font-size:1.2em;font-style:italic;line-height:1.4;border:0;padding:0;color:var(--ink)}
blockquote.question p:last-child{margin-bottom:.6em}
.value{font-variant-numeric:lining-nums}
button.value{display:inline;margin:0;padding:0;border:0;border-radius:0;background:none;color:inherit;font:inherit;font-variant-numeric:lining-nums;text-align:inherit;text-decoration:underline dotted 1px var(--edge);text-underline-offset:.25em;cursor:pointer}
button.value:hover{text-decoration-style:solid}
.whole{white-space:nowrap}
.value-note{white-space:normal;position:fixed;inset:auto;inset-block-end:1rem;inset-inline:1rem;margin:0 auto;width:fit-content;min-width:min(19rem,100vw - 2rem);max-width:min(24rem,100vw - 2rem);padding:.7rem .9rem;border:1px solid var(--edge);border-radius:4px;background:var(--paper);color:var(--ink);font-size:.9rem;font-style:normal;font-weight:400;line-height:1.45;text-align:left}
.value-note code{overflow-wrap:anywhere}
@supports (position-area:block-end span-inline-end){.value-note{inset:auto;margin:.3rem 0;position-area:block-end span-inline-end;position-try-fallbacks:flip-block,flip-inline,flip-block flip-inline,block-end span-all,block-start span-all}}
@supports not selector(:popover-open){.value-note{display:none}}
sup,sub{line-height:0;font-size:.75em}
sup.note a{padding:.4em .25em;margin-inline:-.15em}
hr{border:0;border-top:1px solid var(--rule);margin:2.5em 0}
img{max-width:100%;height:auto}
pre,code,samp,kbd{font-family:"Source Code Pro","Source Sans 3","Lakeproof Math",ui-monospace,monospace;font-variant-ligatures:none}
code,kbd,samp{font-size:.86em}
pre{font-size:1em;line-height:1.5;margin:0 0 1em;padding:.6rem .75rem;background:var(--tint);border-radius:4px;white-space:pre-wrap;overflow-wrap:anywhere;tab-size:2}
pre.report{white-space:pre;overflow-x:auto;font-size:.9em;margin-right:min(0px,max(-16.5rem,(31.5rem - 100cqi)/2))}
pre.problem{border-left:6px solid var(--caution-edge)}
.hljs-keyword,.hljs-literal,.hljs-built_in,.hljs-meta{color:var(--code-word)}
.hljs-string,.hljs-regexp,.hljs-subst .hljs-string,.hljs-template-variable{color:var(--code-text)}
.hljs-number,.hljs-symbol{color:var(--code-number)}
.hljs-title,.hljs-attr,.hljs-property,.hljs-type{color:var(--code-name)}
.hljs-comment,.hljs-doctag{color:var(--code-note);font-style:normal}
.hljs-subst{color:inherit}
math{font-family:"Lakeproof Math","Source Sans 3",math;font-size:1.05em}
.equation{display:grid;grid-template-columns:1fr auto;align-items:center;gap:.75rem;margin:0 0 1em;break-inside:avoid}
.equation math{overflow-x:auto;overflow-y:hidden;padding-block:.25rem}
.equation .number{color:var(--ink-soft)}
.tml-overline{padding-top:.1em;border-top:.065em solid}
.tml-underline{padding-bottom:.1em;border-bottom:.065em solid}
mrow.tml-cancel{background:none}
mtable.tml-array,mtable.tml-jot{border-collapse:collapse}
.notes{margin-top:2.6em;font-size:.9rem;line-height:1.45}
.notes h2{font-size:1.15rem}
.skip{position:absolute;left:.5rem;top:-4rem;padding:.5rem .8rem;background:var(--paper);border:2px solid var(--link);z-index:2}
.skip:focus{top:.5rem}
`;
