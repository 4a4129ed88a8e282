package countstave.cli;

import picocli.CommandLine.IVersionProvider;

/** The version as the jar's manifest or the module states it. */
final class Version implements IVersionProvider {

    @Override
    public String[] getVersion() {
        String version = Version.class.getPackage().getImplementationVersion();
        if (version == null && Version.class.getModule().isNamed()) {
            // the self-contained image keeps it with the module
            version = Version.class.getModule().getDescriptor().rawVersion().orElse(null);
        }
        return new String[] {"countstave " + (version == null ? "(development build)" : version)};
    }
}
