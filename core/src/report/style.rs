//! How a page looks: one column on a phone, two beside each other where there is room, and on paper, where a field with up
//! to six pits is one side of A4 or letter. The paper's size is left to whoever prints.

/// Colours come from the drawings' style sheet.
pub(super) const STYLE: &str = "\
*{box-sizing:border-box}\n\
body{margin:0 auto;max-width:60rem;padding:1rem;background:var(--paper);color:var(--ink);\
font:1.0625rem/1.45 system-ui,sans-serif;overflow-wrap:break-word;-webkit-text-size-adjust:100%;text-size-adjust:100%}\n\
h1{font-size:1.6rem;line-height:1.2;margin:0}\n\
h2{font-size:1.0625rem;line-height:1.3;margin:1rem 0 .25rem}\n\
h3{font-size:1rem;margin:0 0 .25rem}\n\
p{margin:0 0 .5rem}\n\
a{color:inherit}\n\
article+article,[id]{border-top:2px solid var(--ink);margin-top:2rem;padding-top:1.5rem}\n\
.meta,figcaption,.closing,caption{color:var(--faint_ink);font-size:.9375rem;text-align:left}\n\
caption{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}\n\
.sentence{font-size:1.375rem;line-height:1.3;font-weight:600;margin:.5rem 0 .75rem}\n\
figure{margin:0 0 1rem}\n\
figure svg{display:block;width:100%;max-width:30rem;height:auto}\n\
ul{margin:0;padding:0 0 0 1.1rem}\n\
li{margin:.15rem 0}\n\
table{border-collapse:collapse;width:100%;margin:.25rem 0 .75rem}\n\
th,td{text-align:left;vertical-align:top;padding:.25rem .5rem .25rem 0;border-bottom:1px solid var(--faint_ink);\
font-weight:400}\n\
thead th,tbody th{font-weight:600}\n\
.boxes td,.boxes th{border:1px solid var(--ink);height:2.25rem;padding:.25rem}\n\
.closing{margin-top:1rem}\n\
@media (max-width:30rem){body{padding:.75rem}\
:not(.boxes)>table thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}\
:not(.boxes)>table :is(tr,th,td){display:block;border:0;padding:0}:not(.boxes)>table tbody tr{padding:.375rem 0;border-bottom:1px solid var(--faint_ink)}\
:not(.boxes)>table td:empty{display:none}:not(.boxes)>table td::before{content:attr(data-head) \": \"}\
.boxes th,.boxes td{font-size:.6875rem;overflow-wrap:anywhere;padding:.125rem}}\n\
@media (min-width:48rem){.pictures{display:flex;gap:1.5rem;align-items:flex-start}.pictures>*{flex:1 1 0;min-width:0}\
.pictures>section{flex-grow:1.4}.columns{columns:2;column-gap:2rem}.pits{display:grid;grid-template-columns:repeat(3,1fr);gap:1.25rem}\
.alone{grid-column:span 2;display:grid;grid-template-columns:1fr 1fr;column-gap:1.25rem}.alone h3{grid-column:1/-1}}\n\
section{break-inside:avoid}\n\
.columns section:first-child h2,.pictures h2{margin-top:0}\n\
@media print{@page{margin:10mm}body{max-width:none;padding:0;font-size:8pt;line-height:1.24}\
h1{font-size:15pt}h2{font-size:8.5pt;margin:5pt 0 1pt}h3{font-size:8.5pt}p{margin:0 0 3pt}.sentence{font-size:11pt;margin:3pt 0 5pt}\
.meta,figcaption,.closing,caption{font-size:7.5pt}li{margin:.5pt 0}ul{padding-left:9pt}table{margin:0 0 4pt}\
th,td{padding:1.5pt 6pt 1.5pt 0}figure{margin:0 0 4pt;break-inside:avoid}figure svg{max-width:none}\
.pictures{display:flex;gap:6mm;align-items:flex-start}.pictures>*{flex:1 1 0;min-width:0}\
.pictures>section{flex-grow:1.5}.pictures svg{max-height:84mm}.pits svg{max-height:54mm}.pits .hole svg{max-height:60mm}.pits .alone svg{max-height:72mm}.pits .years svg{max-height:120mm}.alone{grid-column:span 2;display:grid;grid-template-columns:1fr 1fr;column-gap:4mm}.alone h3{grid-column:1/-1}\
.columns{columns:2;column-gap:6mm}.pits{display:grid;grid-template-columns:repeat(3,1fr);gap:4mm}\
.details,article+article,[id]{break-before:page;border:0;margin:0;padding:0}.pits section{break-inside:avoid}\
.card svg{max-height:62mm}.columns section{break-inside:auto}li{break-inside:avoid}h2,h3{break-after:avoid}.closing{margin-top:4pt}\
a{text-decoration:none}.boxes td,.boxes th{height:8mm;padding:1mm}}\n";
