package countstave.musicxml;

import jakarta.xml.bind.annotation.XmlTransient;
import jakarta.xml.bind.annotation.XmlType;
import java.lang.annotation.Annotation;
import java.lang.reflect.Field;
import java.lang.reflect.Method;
import java.lang.reflect.Type;
import org.glassfish.jaxb.core.v2.model.annotation.Locatable;
import org.glassfish.jaxb.runtime.v2.model.annotation.AbstractInlineAnnotationReaderImpl;
import org.glassfish.jaxb.runtime.v2.model.annotation.RuntimeAnnotationReader;
import org.glassfish.jaxb.runtime.v2.model.annotation.RuntimeInlineAnnotationReader;

/**
 * Shows the binding ProxyMusic's classes without what is not read: such a field or class looks as if it were transient.
 * Building the context is the longest step of a short run, and grows with what there is to bind.
 */
@SuppressWarnings("rawtypes")
final class ReadAnnotations extends AbstractInlineAnnotationReaderImpl<Type, Class, Field, Method>
        implements RuntimeAnnotationReader {

    private final RuntimeInlineAnnotationReader all = new RuntimeInlineAnnotationReader();
    private final ReadProperties properties = new ReadProperties();
    private final Annotation[] leftOut = {new Transient()};

    @Override
    public <A extends Annotation> A getFieldAnnotation(Class<A> kind, Field field, Locatable place) {
        return properties.leavesOut(field) ? null : all.getFieldAnnotation(kind, field, place);
    }

    @Override
    public boolean hasFieldAnnotation(Class<? extends Annotation> kind, Field field) {
        return properties.leavesOut(field) ? kind == XmlTransient.class : all.hasFieldAnnotation(kind, field);
    }

    @Override
    public Annotation[] getAllFieldAnnotations(Field field, Locatable place) {
        return properties.leavesOut(field) ? leftOut : all.getAllFieldAnnotations(field, place);
    }

    @Override
    public <A extends Annotation> A getClassAnnotation(Class<A> kind, Class type, Locatable place) {
        A annotation = all.getClassAnnotation(kind, type, place);
        // its list of properties names some that are left out
        return annotation instanceof XmlType named ? kind.cast(new Unordered(named)) : annotation;
    }

    @Override
    public boolean hasClassAnnotation(Class type, Class<? extends Annotation> kind) {
        return kind == XmlTransient.class && properties.leavesOut(type) || all.hasClassAnnotation(type, kind);
    }

    @Override
    public <A extends Annotation> A getMethodAnnotation(Class<A> kind, Method method, Locatable place) {
        return all.getMethodAnnotation(kind, method, place);
    }

    @Override
    public boolean hasMethodAnnotation(Class<? extends Annotation> kind, Method method) {
        return all.hasMethodAnnotation(kind, method);
    }

    @Override
    public Annotation[] getAllMethodAnnotations(Method method, Locatable place) {
        return all.getAllMethodAnnotations(method, place);
    }

    @Override
    public <A extends Annotation> A getMethodParameterAnnotation(Class<A> kind, Method method, int index,
            Locatable place) {
        return all.getMethodParameterAnnotation(kind, method, index, place);
    }

    @Override
    public <A extends Annotation> A getPackageAnnotation(Class<A> kind, Class type, Locatable place) {
        return all.getPackageAnnotation(kind, type, place);
    }

    @Override
    public Class getClassValue(Annotation annotation, String name) {
        return all.getClassValue(annotation, name);
    }

    @Override
    public Class[] getClassArrayValue(Annotation annotation, String name) {
        return all.getClassArrayValue(annotation, name);
    }

    @Override
    protected String fullName(Method method) {
        return method.getDeclaringClass().getName() + '#' + method.getName();
    }

    private static final class Transient implements XmlTransient {

        @Override
        public Class<? extends Annotation> annotationType() {
            return XmlTransient.class;
        }
    }

    /** A type whose contents may come in any order; the order matters for writing only. */
    private record Unordered(XmlType type) implements XmlType {

        @Override
        public String[] propOrder() {
            return new String[0];
        }

        @Override
        public String name() {
            return type.name();
        }

        @Override
        public String namespace() {
            return type.namespace();
        }

        @Override
        public Class factoryClass() {
            return type.factoryClass();
        }

        @Override
        public String factoryMethod() {
            return type.factoryMethod();
        }

        @Override
        public Class<? extends Annotation> annotationType() {
            return XmlType.class;
        }
    }
}
