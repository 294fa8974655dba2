/**
 * The connection file of a kernel: five free ports on this machine and a key nobody else knows.
 *
 * Source: Jupyter's connection files (jupyter-client.readthedocs.io, "Making kernels for Jupyter").
 *
 * @module
 */

/** What stands in a connection file. */
export interface Connection {
  readonly ip: "127.0.0.1";
  readonly transport: "tcp";
  readonly shell_port: number;
  readonly iopub_port: number;
  readonly stdin_port: number;
  readonly control_port: number;
  readonly hb_port: number;
  readonly key: string;
  readonly signature_scheme: "hmac-sha256";
  readonly kernel_name: "deno";
}

/**
 * A connection on ports that were free a moment ago. Another program may take one before the kernel does; the kernel
 * then ends at once, and the caller tries again with a new connection.
 *
 * @returns addresses of the five channels, and a new key to sign messages with
 */
export function freeConnection(): Connection {
  // All five are held at once, so that no two are the same.
  const listeners = Array.from(
    { length: 5 },
    () => Deno.listen({ hostname: "127.0.0.1", port: 0 }),
  );
  const ports = listeners.map((listener) => (listener.addr as Deno.NetAddr).port);
  listeners.forEach((listener) => listener.close());
  return {
    ip: "127.0.0.1",
    transport: "tcp",
    shell_port: ports[0]!,
    iopub_port: ports[1]!,
    stdin_port: ports[2]!,
    control_port: ports[3]!,
    hb_port: ports[4]!,
    key: crypto.randomUUID(),
    signature_scheme: "hmac-sha256",
    kernel_name: "deno",
  };
}
