// Bytes to text and back: base64 both ways, and the browser's own inflater.

const CHUNK = 0x8000;

export function bytesFromBase64(text: string): Uint8Array<ArrayBuffer> {
  const binary = atob(text.trim());
  const bytes = new Uint8Array(binary.length);
  for (let i = 0; i < binary.length; i++) bytes[i] = binary.charCodeAt(i);
  return bytes;
}

export function base64FromBytes(bytes: Uint8Array): string {
  let binary = "";
  for (let i = 0; i < bytes.length; i += CHUNK) {
    binary += String.fromCharCode(...bytes.subarray(i, i + CHUNK));
  }
  return btoa(binary);
}

/** True where the browser can pack and unpack by itself. */
export function canUnpack(): boolean {
  return typeof DecompressionStream === "function" && typeof CompressionStream === "function";
}

function through(bytes: Uint8Array<ArrayBuffer>, stream: GenericTransformStream): ReadableStream<Uint8Array> {
  return new Blob([bytes]).stream().pipeThrough(stream as ReadableWritablePair<Uint8Array, Uint8Array>);
}

async function whole(stream: ReadableStream<Uint8Array>): Promise<Uint8Array<ArrayBuffer>> {
  return new Uint8Array(await new Response(stream as unknown as BodyInit).arrayBuffer());
}

/** Unpacks what may come from anyone: a few bytes can hold gigabytes, so it stops
 *  as soon as there are more than so many, and gives null. */
export async function unpackUpTo(most: number, bytes: Uint8Array<ArrayBuffer>, format: CompressionFormat): Promise<Uint8Array | null> {
  const reader = through(bytes, new DecompressionStream(format)).getReader();
  const out = new Uint8Array(most);
  for (let length = 0; ; ) {
    const { done, value } = await reader.read();
    if (done) return out.subarray(0, length);
    if (length + value.length > most) {
      await reader.cancel();
      return null;
    }
    out.set(value, length);
    length += value.length;
  }
}

export function unpack(bytes: Uint8Array<ArrayBuffer>, format: CompressionFormat): Promise<Uint8Array<ArrayBuffer>> {
  return whole(through(bytes, new DecompressionStream(format)));
}

export function pack(bytes: Uint8Array<ArrayBuffer>, format: CompressionFormat): Promise<Uint8Array<ArrayBuffer>> {
  return whole(through(bytes, new CompressionStream(format)));
}
