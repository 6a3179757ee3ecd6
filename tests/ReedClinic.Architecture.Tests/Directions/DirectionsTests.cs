using System.Reflection;
using ReedClinic.Architecture.Tests.Reading;
using ReedClinic.Domain.People;

namespace ReedClinic.Architecture.Tests.Directions;

public sealed class DirectionsTests
{
    [Fact]
    public void The_folders_of_src_are_the_table() => Found.None(ProjectDirections.FoldersOffTheTable(Repository.Projects));

    [Fact]
    public void A_sixth_project_is_seen()
    {
        var planted = Repository.Projects.Append(new Source("src/ReedClinic.Common/ReedClinic.Common.csproj", "<Project />"));

        Found.One(ProjectDirections.FoldersOffTheTable(planted), "ReedClinic.Common");
    }

    [Fact]
    public void Every_project_reference_is_within_the_table() => Found.None(ProjectDirections.ReferencesOffTheTable(Repository.Projects));

    [Fact]
    public void A_reference_from_Documents_to_Data_is_seen()
    {
        var planted = new Source("src/ReedClinic.Documents/ReedClinic.Documents.csproj",
            """<Project><ItemGroup><ProjectReference Include="..\ReedClinic.Data\ReedClinic.Data.csproj" /></ItemGroup></Project>""");

        Found.One(ProjectDirections.ReferencesOffTheTable([planted]), "Documents refers to ReedClinic.Data");
    }

    [Fact]
    public void Domain_takes_no_package_but_MathNet() => Found.None(ProjectDirections.PackagesOfDomain(Repository.Projects));

    [Fact]
    public void A_package_in_Domain_is_seen()
    {
        var planted = new Source("src/ReedClinic.Domain/ReedClinic.Domain.csproj",
            """<Project><ItemGroup><PackageReference Include="Serilog" /></ItemGroup></Project>""");

        Found.One(ProjectDirections.PackagesOfDomain([planted]), "Serilog");
    }

    [Fact]
    public void Domain_is_built_on_the_base_library_and_MathNet_alone() => Found.None(StrangersOf(typeof(Actor).Assembly));

    [Fact]
    public void An_assembly_built_on_more_is_seen()
    {
        Assert.Contains(StrangersOf(typeof(DirectionsTests).Assembly), stranger => stranger.StartsWith("xunit.v3", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_project_is_in_the_solution() =>
        Found.None(ProjectDirections.ProjectsOutsideTheSolution(Repository.Projects, Solution));

    [Fact]
    public void A_test_project_left_out_of_the_solution_is_seen()
    {
        var planted = new Source("tests/ReedClinic.Lost.Tests/ReedClinic.Lost.Tests.csproj", "<Project />");

        Found.One(ProjectDirections.ProjectsOutsideTheSolution([planted], Solution), "Lost.Tests");
    }

    private static string Solution => File.ReadAllText(Path.Combine(Repository.Top, "ReedClinic.sln"));

    private static IEnumerable<string> StrangersOf(Assembly assembly) =>
        assembly.GetReferencedAssemblies().Select(name => name.Name ?? string.Empty)
            .Where(name => !name.StartsWith("System.", StringComparison.Ordinal) && name is not "System" and not "MathNet.Numerics");
}
