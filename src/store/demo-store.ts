/** The demo's own database. The dealer's lies beside it and is never opened by a page that shows the demo. */
export const DEMO_STORE = 'headroom-demo';
