/**
 * The identity of the test variant, so that its pages have an address known beforehand. The private half of the key was
 * thrown away: nothing is ever signed with it.
 */
export const TEST_KEY =
  'MIIBIjANBgkqhkiG9w0BAQEFAAOCAQ8AMIIBCgKCAQEAzEywP0tEIBIjy8iD3YyViUIJBdWbXTqSUFliUGuZTPS6MHnhg0F1IrNeD9WJnzLvlRQNi1JbVL+mZ7JdwVWZIrf7LORgEObO1jxb0fbp2AznTUJyGblaimKp1spyo3QG3X50y6VoeMvmn33ONGt7zumpkS3nMS9Y0G2Ewp44PlQ+VQwLTM1a1kWyFDV/1dOlvDjcfLJIm9zfB7mXDl3N2iTGYOBAOQvWf0sg1ebuu+Vgb7J+C9tbZzr5x41fIgdqKHmyHnsoYJSEfrO3oGZAGRO3LeMp2UDEhkLVSqbfPS9rEqf4qzuoiu/F5bVnIsEDqO3BTkW087phUnRIHvVqewIDAQAB';

/** What Chromium makes of the key: the first half of its SHA-256, written with the letters a to p. */
export const TEST_CHROMIUM_ID = 'gfhgknkpcpndmmhpnlockamdjdfkhhlf';

/** The host name of the extension's pages in Firefox, handed over in the test profile's preferences. */
export const TEST_FIREFOX_HOST = '11111111-2222-4333-8444-555555555555';
