import { accessible } from './on-the-demo/accessible.ts';
import { onOneDemo } from './on-the-demo/in-turn.ts';
import { onPaper } from './on-the-demo/print.ts';
import { week } from './on-the-demo/week.ts';

// Paper first, because a worksheet remembers what was opened on it; the last of them places a proxy.
onOneDemo({ 'on paper': onPaper, 'on every screen': accessible, 'in the week': week });
