using System.Xml.Linq;
using ReedClinic.Architecture.Tests.Reading;

namespace ReedClinic.Architecture.Tests.Directions;

/// <summary>The one table of who may refer to whom. A sixth project needs a decision in docs/decisions.</summary>
public static class ProjectDirections
{
    public static IReadOnlyDictionary<string, string[]> MayReferTo { get; } = new Dictionary<string, string[]>
    {
        ["ReedClinic.Domain"] = [],
        ["ReedClinic.Measurement"] = ["ReedClinic.Domain"],
        ["ReedClinic.Documents"] = ["ReedClinic.Domain"],
        ["ReedClinic.Data"] = ["ReedClinic.Domain"],
        ["ReedClinic.Web"] = ["ReedClinic.Domain", "ReedClinic.Measurement", "ReedClinic.Documents", "ReedClinic.Data"],
    };

    public static IEnumerable<string> FoldersOffTheTable(IEnumerable<Source> projects)
    {
        var folders = projects.Where(project => project.IsUnder("src")).Select(project => project.Path.Split('/')[1]).ToHashSet();
        return folders.Except(MayReferTo.Keys).Select(folder => $"src/{folder} is not in the table")
            .Concat(MayReferTo.Keys.Except(folders).Select(folder => $"the table names {folder}, which src lacks"));
    }

    public static IEnumerable<string> ReferencesOffTheTable(IEnumerable<Source> projects) =>
        from project in projects
        where project.IsUnder("src")
        let name = Path.GetFileNameWithoutExtension(project.Name)
        from reference in Included(project, "ProjectReference").Select(path => Path.GetFileNameWithoutExtension(path.Replace('\\', '/')))
        where !MayReferTo.GetValueOrDefault(name, []).Contains(reference)
        select $"{name} refers to {reference}";

    public static IEnumerable<string> PackagesOfDomain(IEnumerable<Source> projects) =>
        from project in projects
        where project.Name == "ReedClinic.Domain.csproj"
        from package in Included(project, "PackageReference")
        where package != "MathNet.Numerics"
        select $"Domain takes the package {package}";

    public static IEnumerable<string> ProjectsOutsideTheSolution(IEnumerable<Source> projects, string solution) =>
        from project in projects
        where !solution.Replace('\\', '/').Contains($"\"{project.Path}\"", StringComparison.Ordinal)
        select $"{project.Path} is not in ReedClinic.sln";

    private static IEnumerable<string> Included(Source project, string item) =>
        XDocument.Parse(project.Text).Descendants(item).Select(element => (string?)element.Attribute("Include")).OfType<string>();
}
