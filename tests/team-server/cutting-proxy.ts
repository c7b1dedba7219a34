import { connect, createServer, type Socket } from 'node:net';

/**
 * Between a device and its server: lets everything through until it is told to cut at the next thing that the device says,
 * before the server hears it, or when the server answers, before the device hears that.
 */
export interface CuttingProxy {
  readonly address: string;
  cutAt: 'the message' | 'the answer' | null;
  stop(): Promise<void>;
}

export async function cuttingProxy(target: string): Promise<CuttingProxy> {
  const open = new Set<Socket>();
  const server = createServer((device) => {
    const there = connect(Number(new URL(target).port), '127.0.0.1');
    const ends = [device, there];
    const end = () => {
      for (const one of ends) one.destroy();
      for (const one of ends) open.delete(one);
    };
    for (const one of ends) open.add(one.on('error', end).on('close', end));
    const passing = (from: Socket, to: Socket, cutAt: CuttingProxy['cutAt']) =>
      from.on('data', (bytes) => {
        if (proxy.cutAt === cutAt) {
          proxy.cutAt = null;
          end();
        } else to.write(bytes);
      });
    passing(device, there, 'the message');
    passing(there, device, 'the answer');
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const { port } = server.address() as { port: number };
  const proxy: CuttingProxy = {
    address: `ws://127.0.0.1:${port}`,
    cutAt: null,
    stop: () =>
      new Promise((done) => {
        for (const one of open) one.destroy();
        server.close(() => done());
      }),
  };
  return proxy;
}
