/** The style of every sheet: ink on paper, light and dark on a screen, one column that a phone holds. */
export const sheetStyle = `
:root { color-scheme: light dark; --ink: #14181b; --paper: #fdfdfb; --pale: #5b646b; --rule: #b9c0c5; --soft: #eef0ee; --warn: #7a2e00; --warn-soft: #fff1e2; --go: #0b4f6c; }
@media (prefers-color-scheme: dark) { :root { --ink: #eceff0; --paper: #14181b; --pale: #aab4ba; --rule: #4c565d; --soft: #20262a; --warn: #ffc48f; --warn-soft: #33210f; --go: #9ad7f2; } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 16px; max-width: 1040px; background: var(--paper); color: var(--ink); font: 16px/1.45 system-ui, "DejaVu Sans", sans-serif; overflow-wrap: anywhere; }
h1 { font-size: 1.5rem; line-height: 1.2; margin: 0 0 4px; } h2 { font-size: 1.2rem; margin: 28px 0 8px; } h3 { font-size: 1rem; margin: 12px 0 4px; }
p, ul { margin: 6px 0; } ul { padding-left: 22px; }
.head { border-bottom: 3px solid var(--ink); padding-bottom: 10px; } .head dl { display: flex; flex-wrap: wrap; gap: 2px 18px; margin: 6px 0 0; } .head dt { color: var(--pale); } .head dd { margin: 0; font-weight: 600; } .head div { display: flex; gap: 6px; }
.unproved { background: var(--ink); color: var(--paper); font-weight: 700; padding: 10px 14px; margin: 0 0 12px; letter-spacing: .02em; }
.caution, .hold, .trap { border: 2px solid var(--warn); border-left-width: 10px; background: var(--warn-soft); padding: 8px 12px; margin: 8px 0; }
.hold { border-style: double; border-width: 4px; border-left-width: 10px; } .trap { border-style: dashed; border-left-style: solid; }
.caution b, .hold b, .trap b { color: var(--warn); }
.pan { overflow-x: auto; max-width: 100%; } .pan:focus-visible { outline: 3px solid var(--go); }
table { border-collapse: collapse; width: 100%; font-size: .9rem; overflow-wrap: normal; } th, td { text-align: left; vertical-align: top; border-bottom: 1px solid var(--rule); padding: 5px 8px; } th { border-bottom: 2px solid var(--ink); }
tr.changed td { font-weight: 650; } tr.changed td:first-child { border-left: 6px solid var(--ink); }
svg { display: block; } svg text { fill: var(--ink); } svg.face .body { fill: none; stroke: var(--ink); stroke-width: 2.5; } svg.face .latch { fill: var(--ink); stroke: var(--ink); }
svg .cavity { fill: var(--paper); stroke: var(--pale); stroke-width: 1.2; } svg .blocked { fill: var(--rule); stroke: var(--pale); } svg.face text { paint-order: stroke; stroke: var(--paper); stroke-width: 2px; } svg .wire { stroke: var(--ink); stroke-width: 1.6; } svg .stripe { stroke-width: 4; } svg .plug { stroke: var(--ink); stroke-width: 2.5; fill: none; } svg .contact { fill: none; stroke: var(--ink); stroke-width: 1.5; }
svg .marked { fill: none; stroke: var(--ink); stroke-width: 4.5; } svg .flag { fill: var(--ink); } svg.face .flag-text { fill: var(--paper); stroke: none; font-weight: 700; }
.views { display: flex; flex-wrap: wrap; gap: 8px 22px; } .views figure { flex: 1 1 240px; min-width: 0; } .views.wide figure { flex-basis: 100%; } figure { margin: 8px 0; max-width: 100%; } figcaption { font-size: .875rem; } .other { color: var(--pale); }
svg.strand { max-width: 100%; height: auto; font-size: 13px; } .strand .outline { fill: none; stroke: var(--ink); } .strand .strand-wire { fill: none; } .strand .point { fill: var(--paper); stroke: var(--ink); stroke-width: 2; } .strand .solid { fill: var(--ink); } .strand .small { fill: none; stroke: var(--ink); stroke-width: .9; } .strand .beyond { fill: none; stroke: var(--ink); stroke-width: 2.5; } .strand .point-text { font-weight: 650; } .strand .wire-text { fill: var(--pale); } .strand .wire-text.new, .strand .wire-text.gone, .strand .wire-text.abandoned { fill: var(--ink); font-style: italic; }
.pair { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(340px, 100%), 1fr)); gap: 8px 24px; }
.step { border-top: 2px solid var(--ink); padding: 12px 0; } .order { font-size: 1.15rem; font-weight: 650; margin: 4px 0; } .number { display: inline-block; min-width: 2.2em; }
.repair { border-left: 4px dotted var(--ink); padding: 2px 12px; margin: 10px 0; } .repair ol { margin: 4px 0; padding-left: 24px; }
.place { font-size: 1.05rem; } .help { color: var(--pale); }
fieldset { border: 1px solid var(--rule); margin: 10px 0 0; padding: 8px; } legend { font-weight: 650; padding: 0 4px; } .answers { display: flex; flex-wrap: wrap; gap: 6px; } .answers label { display: flex; align-items: center; gap: 8px; min-height: 48px; padding: 4px 12px; border: 1px solid var(--rule); flex: 1 1 130px; } .answers input { flex: none; width: 22px; height: 22px; accent-color: var(--go); }
textarea, input[type=text] { width: 100%; font: inherit; color: inherit; background: var(--paper); border: 1px solid var(--pale); padding: 8px; min-height: 48px; }
button, .button { font: inherit; color: var(--paper); background: var(--ink); border: 0; min-height: 48px; padding: 8px 18px; cursor: pointer; } button:disabled { background: var(--soft); color: var(--pale); border: 1px solid var(--rule); }
button:focus-visible, input:focus-visible, textarea:focus-visible, summary:focus-visible { outline: 3px solid var(--go); outline-offset: 2px; }
.bar { display: flex; flex-wrap: wrap; gap: 8px; margin: 12px 0; } .bar > * { flex: 1 1 130px; } summary { min-height: 44px; display: flex; align-items: center; cursor: pointer; font-weight: 650; }
summary::before { content: "+"; border: 1px solid currentColor; width: 22px; text-align: center; margin-right: 8px; } details[open] summary::before { content: "-"; }
.single .step:not(.current), .single .whole { display: none; } #storage-warning { position: sticky; top: 0; z-index: 2; } .tick-lines { display: none; } [hidden] { display: none !important; }
footer { margin-top: 28px; border-top: 1px solid var(--rule); padding-top: 8px; font-size: .875rem; color: var(--pale); }
@media print { :root { color-scheme: light; --ink: #000; --paper: #fff; --pale: #444; --rule: #999; --soft: #fff; --warn: #000; --warn-soft: #fff; --go: #000; } body { padding: 0; max-width: none; font-size: 10.5pt; } .screen, .answers, textarea, .bar, legend + *, #record, footer { display: none !important; } .tick-lines { display: block; } fieldset { border: 0; padding: 0; } legend { display: none; } .single .step:not(.current), .single .whole { display: block; } .step { break-inside: auto; } .order, .place, h2, h3 { break-after: avoid; } .step > .caution, .step > .hold { break-after: avoid; } figure, .caution, .hold, .trap, tr, svg.strand { break-inside: avoid; } details > * { display: block; } .pan { overflow: visible; } svg.face { max-width: 100%; height: auto; max-height: 90mm; } thead { display: table-header-group; } table { font-size: 8.5pt; overflow-wrap: anywhere; } th, td { padding: 3px 4px; } }
`;
