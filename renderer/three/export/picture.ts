/** A picture of the canvas. */

/** Draws and reads within one task: the browser clears the drawing buffer after it. */
export function captureCanvas(canvas: HTMLCanvasElement, draw: () => void): Promise<Blob> {
  draw();
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => {
      if (blob === null)
        reject(new Error("The picture could not be made: the canvas has no size or no memory."));
      else resolve(blob);
    }, "image/png");
  });
}
