/** How finely to draw: a processor that draws in software gets what it can draw many times a second. */

export interface Quality {
  /** A graphics processor is there: smooth edges, sharp textures, soft shadows. */
  readonly fine: boolean;
  /** Drawn pixels per CSS pixel while the picture stands and while it moves. */
  readonly still: number;
  readonly moving: number;
  /** While a film is recorded: its frames must come in time, and be all of one size. */
  readonly film: number;
}

/** Without smooth edges of its own a standing picture is drawn at twice its size, whatever the screen. */
const SMOOTHED = 2;
const COARSE = 0.75;

/** More pixels than this per CSS pixel cost frames and show little. */
const FINEST = 1.5;

export function qualityFor(renderer: string, screen: number): Quality {
  if (/swiftshader|llvmpipe|software|basic render/i.test(renderer)) {
    return { fine: false, still: SMOOTHED, moving: COARSE, film: 1 };
  }
  const still = Math.min(FINEST, Math.max(1, screen));
  return { fine: true, still, moving: still, film: still };
}

/** Asks the browser what draws; `null` where it has no WebGL 2. */
export function findQuality(): Quality | null {
  const gl = document.createElement("canvas").getContext("webgl2");
  if (gl === null) return null;
  const names = gl.getExtension("WEBGL_debug_renderer_info");
  const name = names === null ? "" : String(gl.getParameter(names.UNMASKED_RENDERER_WEBGL));
  gl.getExtension("WEBGL_lose_context")?.loseContext();
  return qualityFor(name, window.devicePixelRatio);
}
