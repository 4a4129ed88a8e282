package countstave.cli;

import countstave.files.Console;
import countstave.sound.Layer;
import java.util.Arrays;
import java.util.stream.Collectors;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** {@code --layers}: {@code bar}, {@code beat}, {@code grid}, {@code rhythm}. */
final class LayerConverter implements ITypeConverter<Layer> {

    @Override
    public Layer convert(String text) {
        for (Layer layer : Layer.values()) {
            if (layer.id().equals(text.strip())) {
                return layer;
            }
        }
        throw new TypeConversionException("'" + Console.clean(text) + "' is not a layer; there are "
                + Arrays.stream(Layer.values()).map(Layer::id).collect(Collectors.joining(", ")));
    }
}
