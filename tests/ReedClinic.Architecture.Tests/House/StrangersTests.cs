using ReedClinic.Architecture.Tests.Reading;

namespace ReedClinic.Architecture.Tests.House;

public sealed class StrangersTests
{
    private static readonly Dictionary<(string Path, string Place), string> Allowed = new()
    {
        [("deploy/Dockerfile", "mcr." + "microsoft.com")] = "the official .NET images; ARGs replace them",
        [("docker-compose.yml", "mcr." + "microsoft.com")] = "the same, as defaults of those ARGs",
        [("tests/lib/prepare-containers.sh", "docker" + ".io")] = "the name of a Debian package",
    };

    [Fact]
    public void No_file_names_a_machine_or_a_registry() => Found.None(Strangers.Named(Repository.All, Allowed));

    [Fact]
    public void A_machine_path_is_seen() =>
        Found.One(Strangers.Named([new Source("docs/x.md", "one\nsee /ho" + "me/somebody/reeds")], Allowed), "docs/x.md:2");
}
