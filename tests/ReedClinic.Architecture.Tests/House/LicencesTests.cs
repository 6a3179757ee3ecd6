using ReedClinic.Architecture.Tests.Reading;

namespace ReedClinic.Architecture.Tests.House;

public sealed class LicencesTests
{
    [Fact]
    public void The_licence_of_every_package_that_is_given_out_is_listed() => Found.None(Licences.Unlisted(Text(Licences.Lock), Text(Licences.List)));

    [Theory]
    [InlineData("| Stranger | 1.0.0 | MIT |")]
    [InlineData("| Stranger | 1.0.1 | unknown |")]
    [InlineData("| Other | 1.0.1 | MIT |")]
    public void One_that_is_not_listed_as_it_is_locked_is_seen(string row) => Assert.Single(Licences.Unlisted(
        """{ "version": 1, "dependencies": { "net10.0": { "Stranger": { "type": "Direct", "resolved": "1.0.1" }, "ours": { "type": "Project" } } } }""",
        "| package | version | licence |\n| --- | --- | --- |\n" + row + "\n"));

    private static string Text(string path) => File.ReadAllText(Path.Combine(Repository.Top, path));
}
