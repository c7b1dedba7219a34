import { CompactEncrypt, compactDecrypt, importJWK } from 'jose';
import { describe, expect, test } from 'vitest';
import { makeTeamKey, seal, unseal } from '../../src/team/seal/seal.ts';

const textOf = async (sealed: string, key: Awaited<ReturnType<typeof importJWK>>): Promise<string> =>
  new TextDecoder().decode((await compactDecrypt(sealed, key)).plaintext);

/** Published examples of the standard, opened by the library that seals a team's messages. */
describe('sealed as RFC 7516 says', () => {
  test('appendix A.1, RSAES-OAEP and AES GCM of 256 bits, the cipher that Headroom seals with', async () => {
    const key = await importJWK(
      {
        kty: 'RSA',
        n: 'oahUIoWw0K0usKNuOR6H4wkf4oBUXHTxRvgb48E-BVvxkeDNjbC4he8rUWcJoZmds2h7M70imEVhRU5djINXtqllXI4DFqcI1DgjT9LewND8MW2Krf3Spsk_ZkoFnilakGygTwpZ3uesH-PFABNIUYpOiN15dsQRkgr0vEhxN92i2asbOenSZeyaxziK72UwxrrKoExv6kc5twXTq4h-QChLOln0_mtUZwfsRaMStPs6mS6XrgxnxbWhojf663tuEQueGC-FCMfra36C9knDFGzKsNa7LZK2djYgyD3JR_MB_4NUJW_TqOQtwHYbxevoJArm-L5StowjzGy-_bq6Gw',
        e: 'AQAB',
        d: 'kLdtIj6GbDks_ApCSTYQtelcNttlKiOyPzMrXHeI-yk1F7-kpDxY4-WY5NWV5KntaEeXS1j82E375xxhWMHXyvjYecPT9fpwR_M9gV8n9Hrh2anTpTD93Dt62ypW3yDsJzBnTnrYu1iwWRgBKrEYY46qAZIrA2xAwnm2X7uGR1hghkqDp0Vqj3kbSCz1XyfCs6_LehBwtxHIyh8Ripy40p24moOAbgxVw3rxT_vlt3UVe4WO3JkJOzlpUf-KTVI2Ptgm-dARxTEtE-id-4OJr0h-K-VFs3VSndVTIznSxfyrj8ILL6MG_Uv8YAu7VILSB3lOW085-4qE3DzgrTjgyQ',
        p: '1r52Xk46c-LsfB5P442p7atdPUrxQSy4mti_tZI3Mgf2EuFVbUoDBvaRQ-SWxkbkmoEzL7JXroSBjSrK3YIQgYdMgyAEPTPjXv_hI2_1eTSPVZfzL0lffNn03IXqWF5MDFuoUYE0hzb2vhrlN_rKrbfDIwUbTrjjgieRbwC6Cl0',
        q: 'wLb35x7hmQWZsWJmB_vle87ihgZ19S8lBEROLIsZG4ayZVe9Hi9gDVCOBmUDdaDYVTSNx_8Fyw1YYa9XGrGnDew00J28cRUoeBB_jKI1oma0Orv1T9aXIWxKwd4gvxFImOWr3QRL9KEBRzk2RatUBnmDZJTIAfwTs0g68UZHvtc',
        dp: 'ZK-YwE7diUh0qR1tR7w8WHtolDx3MZ_OTowiFvgfeQ3SiresXjm9gZ5KLhMXvo-uz-KUJWDxS5pFQ_M0evdo1dKiRTjVw_x4NyqyXPM5nULPkcpU827rnpZzAJKpdhWAgqrXGKAECQH0Xt4taznjnd_zVpAmZZq60WPMBMfKcuE',
        dq: 'Dq0gfgJ1DdFGXiLvQEZnuKEN0UUmsJBxkjydc3j4ZYdBiMRAy86x0vHCjywcMlYYg4yoC4YZa9hNVcsjqA3FeiL19rk8g6Qn29Tt0cj8qqyFpz9vNDBUfCAiJVeESOjJDZPYHdHY8v1b-o-Z2X5tvLx-TCekf7oxyeKDUqKWjis',
        qi: 'VIMpMYbPf47dT1w_zDUXfPimsSegnMOA1zTaX7aGk_8urY6R8-ZW1FxU7AlWAyLWybqq6t16VFd7hQd0y6flUK4SlOydB61gwanOsXGOAOv82cHq0E3eL4HrtZkUuKvnPrMnsUUFlfUdybVzxyjz9JF_XyaY14ardLSjf4L_FNY',
      },
      'RSA-OAEP',
    );
    const sealed = [
      'eyJhbGciOiJSU0EtT0FFUCIsImVuYyI6IkEyNTZHQ00ifQ',
      'OKOawDo13gRp2ojaHV7LFpZcgV7T6DVZKTyKOMTYUmKoTCVJRgckCL9kiMT03JGeipsEdY3mx_etLbbWSrFr05kLzcSr4qKAq7YN7e9jwQRb23nfa6c9d-StnImGyFDbSv04uVuxIp5Zms1gNxKKK2Da14B8S4rzVRltdYwam_lDp5XnZAYpQdb76FdIKLaVmqgfwX7XWRxv2322i-vDxRfqNzo_tETKzpVLzfiwQyeyPGLBIO56YJ7eObdv0je81860ppamavo35UgoRdbYaBcoh9QcfylQr66oc6vFWXRcZ_ZT2LawVCWTIy3brGPi6UklfCpIMfIjf7iGdXKHzg',
      '48V1_ALb6US04U3b',
      '5eym8TW_c8SuK0ltJ3rpYIzOeDQz7TALvtu6UG9oMo4vpzs9tX_EFShS8iB7j6jiSdiwkIr3ajwQzaBtQD_A',
      'XFBoMYUZodetZdvTiFvSkQ',
    ].join('.');
    expect(await textOf(sealed, key)).toBe('The true sign of intelligence is not knowledge but imagination.');
  });

  test('appendix A.1 again: the content encryption key that it states makes the very same message by our way', async () => {
    const key = Uint8Array.of(
      177,
      161,
      244,
      128,
      84,
      143,
      225,
      115,
      63,
      180,
      3,
      255,
      107,
      154,
      212,
      246,
      138,
      7,
      110,
      91,
      112,
      46,
      34,
      105,
      47,
      130,
      203,
      46,
      122,
      234,
      64,
      252,
    );
    const cipher = await crypto.subtle.importKey('raw', key, 'AES-GCM', true, ['encrypt', 'decrypt']);
    const text = 'The true sign of intelligence is not knowledge but imagination.';
    const [header = '', none, iv = '', content, tag] = (await seal(text, { number: 1, key: cipher })).split('.');
    // What the standard's example does by hand: AES GCM over the text, with the header as additional data.
    const sealed = await crypto.subtle.encrypt(
      { name: 'AES-GCM', iv: Buffer.from(iv, 'base64url'), additionalData: new TextEncoder().encode(header) },
      cipher,
      new TextEncoder().encode(text),
    );
    expect(none).toBe('');
    expect(Buffer.from(sealed).toString('base64url')).toBe(
      Buffer.concat([Buffer.from(content ?? '', 'base64url'), Buffer.from(tag ?? '', 'base64url')]).toString(
        'base64url',
      ),
    );
    const example = await crypto.subtle.encrypt(
      {
        name: 'AES-GCM',
        iv: Buffer.from('48V1_ALb6US04U3b', 'base64url'),
        additionalData: new TextEncoder().encode('eyJhbGciOiJSU0EtT0FFUCIsImVuYyI6IkEyNTZHQ00ifQ'),
      },
      cipher,
      new TextEncoder().encode(text),
    );
    expect(Buffer.from(example).subarray(0, -16).toString('base64url')).toBe(
      '5eym8TW_c8SuK0ltJ3rpYIzOeDQz7TALvtu6UG9oMo4vpzs9tX_EFShS8iB7j6jiSdiwkIr3ajwQzaBtQD_A',
    );
  });

  test('appendix A.3, AES key wrap', async () => {
    const key = await importJWK({ kty: 'oct', k: 'GawgguFyGrWKav7AX4VKUg' }, 'A128KW');
    const sealed =
      'eyJhbGciOiJBMTI4S1ciLCJlbmMiOiJBMTI4Q0JDLUhTMjU2In0.6KB707dM9YTIgHtLvtgWQ8mKwboJW3of9locizkDTHzBC2IlrT1oOQ.AxY8DCtDaGlsbGljb3RoZQ.KDlTtXchhZTGufMYmOYGS4HffxPSUrfmqCHXaI9wOGY.U0m_YmjN04DJvceFICbCVQ';
    expect(await textOf(sealed, key)).toBe('Live long and prosper.');
  });
});

test('direct encryption as RFC 7520, section 5.6, shows it', async () => {
  const key = await importJWK({ kty: 'oct', k: 'XctOhJAkA-pD9Lh7ZgW_2A' }, 'A128GCM');
  const sealed =
    'eyJhbGciOiJkaXIiLCJraWQiOiI3N2M3ZTJiOC02ZTEzLTQ1Y2YtODY3Mi02MTdiNWI0NTI0M2EiLCJlbmMiOiJBMTI4R0NNIn0..refa467QzzKx6QAB.JW_i_f52hww_ELQPGaYyeAB6HYGcR559l9TYnSovc23XJoBcW29rHP8yZOZG7YhLpT1bjFuvZPjQS-m0IFtVcXkZXdH_lr_FrdYt9HRUYkshtrMmIUAyGmUnd9zMDB2n0cRDIHAzFVeJUDxkUwVAE7_YGRPdcqMyiBoCO-FBdE-Nceb4h3-FtBP-c_BIwCPTjb9o0SbdcdREEMJMyZBH8ySWMVi1gPD9yxi-aQpGbSv_F9N4IZAxscj5g-NJsUPbjk29-s7LJAGb15wEBtXphVCgyy53CoIKLHHeJHXex45Uz9aKZSRSInZI-wjsY0yu3cT4_aQ3i1o-tiE-F8Ios61EKgyIQ4CWao8PFMj8TTnp.vbb32Xvllea2OtmHAdccRQ';
  expect(await textOf(sealed, key)).toMatch(/^You can trust us to stick with you .* We are your friends, Frodo\.$/);
});

describe('what is sealed for a team', () => {
  test('opens with its key, to the last letter', async () => {
    const key = await makeTeamKey(3);
    const sealed = await seal('\uFEFFLot 12 — “runs”, €5', key);
    expect(await unseal(sealed, (number) => (number === 3 ? key.key : undefined))).toEqual({
      ok: true,
      value: { text: '\uFEFFLot 12 — “runs”, €5', key: 3 },
    });
  });

  test('is refused with a key that is not here, with another key, and when one letter of it was altered', async () => {
    const [key, other] = [await makeTeamKey(1), await makeTeamKey(1)];
    const sealed = await seal('a', key);
    const altered = sealed.replace(/\.([^.])([^.]*)$/, (_, first, rest) => `.${first === 'A' ? 'B' : 'A'}${rest}`);
    expect(await unseal(sealed, () => undefined)).toMatchObject({ ok: false, reason: 'no-key' });
    expect(await unseal(sealed, () => other.key)).toMatchObject({ ok: false, reason: 'altered' });
    expect(await unseal(altered, () => key.key)).toMatchObject({ ok: false, reason: 'altered' });
  });

  test('is refused when it is sealed in another way, or is no sealed text at all', async () => {
    const { key } = await makeTeamKey(1);
    const wrapping = await crypto.subtle.generateKey({ name: 'AES-KW', length: 256 }, true, ['wrapKey', 'unwrapKey']);
    const otherwise = await new CompactEncrypt(new TextEncoder().encode('a'))
      .setProtectedHeader({ alg: 'A256KW', enc: 'A256GCM', kid: '1' })
      .encrypt(wrapping);
    for (const text of [otherwise, '', 'a.b.c.d.e', 'x'.repeat(100)])
      expect(await unseal(text, () => key)).toMatchObject({ ok: false, reason: 'not-sealed' });
  });
});
