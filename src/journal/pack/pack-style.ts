/** The look of a pack's page: paper and ink, readable on any screen and on paper. */
export const PACK_STYLE = `
:root{color-scheme:light dark;font:16px/1.5 system-ui,sans-serif}
body{margin:0}main{max-width:50rem;margin:0 auto;padding:1.5rem;overflow-wrap:anywhere}
h1{font-size:1.5rem}h2{font-size:1.2rem;margin-top:2rem}
table{border-collapse:collapse;width:100%}caption{text-align:left;font-weight:600}
th{text-align:left;font-weight:600;padding:.2rem 1rem .2rem 0;vertical-align:top;white-space:nowrap}td{padding:.2rem 0}
.life{padding:0;list-style:none}.life li{border-top:1px solid #8888;padding:.5rem 0}.life p{margin:0}
time{font-weight:600;margin-right:.5rem}.small{font-size:.85rem}
figure{margin:.5rem 0}img{max-width:100%;height:auto;border:1px solid #8888}figcaption{font-size:.85rem}
pre{white-space:pre-wrap;font-size:.75rem;border:1px solid #8888;padding:.5rem;overflow-wrap:anywhere}
@media print{:root{color-scheme:light}li,figure{break-inside:avoid}}
`;
