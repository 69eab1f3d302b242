package org.docksweep.kiosk.screens;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;

/**
 * Writes pictures of the screen small enough for a repository: the 256 most frequent colours, hardest compression. The
 * page is drawn in few colours; only the softest edges of letters move to a neighbouring shade.
 */
public final class SmallPng {
    private static final int COLOURS = 256;

    private SmallPng() {}

    /**
     * Writes a picture.
     *
     * @throws IOException if the file cannot be written
     */
    public static void write(BufferedImage image, Path file) throws IOException {
        int[] palette = palette(image);
        BufferedImage indexed = new BufferedImage(
                image.getWidth(),
                image.getHeight(),
                BufferedImage.TYPE_BYTE_INDEXED,
                new IndexColorModel(8, palette.length, palette, 0, false, -1, java.awt.image.DataBuffer.TYPE_BYTE));
        Map<Integer, Integer> nearest = new HashMap<>();
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                int index = nearest.computeIfAbsent(image.getRGB(x, y) & 0xffffff, rgb -> nearest(rgb, palette));
                indexed.getRaster().setSample(x, y, 0, index);
            }
        }
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        ImageWriteParam hardest = writer.getDefaultWriteParam();
        hardest.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        hardest.setCompressionQuality(0);
        try (OutputStream out = Files.newOutputStream(file);
                ImageOutputStream stream = ImageIO.createImageOutputStream(out)) {
            writer.setOutput(stream);
            writer.write(null, new IIOImage(indexed, null, null), hardest);
        } finally {
            writer.dispose();
        }
    }

    private static int[] palette(BufferedImage image) {
        Map<Integer, Integer> counts = new HashMap<>();
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                counts.merge(image.getRGB(x, y) & 0xffffff, 1, Integer::sum);
            }
        }
        List<Integer> frequent = counts.entrySet().stream()
                .sorted(Map.Entry.<Integer, Integer>comparingByValue()
                        .reversed()
                        .thenComparing(Map.Entry.comparingByKey()))
                .limit(COLOURS)
                .map(Map.Entry::getKey)
                .toList();
        return frequent.stream().mapToInt(Integer::intValue).toArray();
    }

    private static int nearest(int rgb, int[] palette) {
        int best = 0;
        int least = Integer.MAX_VALUE;
        for (int i = 0; i < palette.length; i++) {
            int red = (rgb >> 16 & 255) - (palette[i] >> 16 & 255);
            int green = (rgb >> 8 & 255) - (palette[i] >> 8 & 255);
            int blue = (rgb & 255) - (palette[i] & 255);
            int distance = red * red + green * green + blue * blue;
            if (distance < least) {
                least = distance;
                best = i;
            }
        }
        return best;
    }
}
