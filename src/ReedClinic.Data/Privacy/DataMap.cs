using System.Reflection;
using Microsoft.EntityFrameworkCore.Metadata;

namespace ReedClinic.Data.Privacy;

/// <summary>
/// What is kept, why and how long: data.tsv in this folder, which is part of this assembly. A test holds it complete over the
/// whole model. OWASP ASVS 5.0: 14.1.1, 14.1.2.
/// </summary>
public sealed class DataMap
{
    private const string Contact = "contact";

    private readonly Dictionary<(string Entity, string Property), DataRow> _rows;

    private DataMap(IEnumerable<string[]> lines)
    {
        var cells = lines.ToList();
        Classes = [.. cells.Where(line => line[0] == "class").Select(line => new DataClass(line[1], line[2], line[3], line[4], line[5], line[6]))];
        _rows = cells.Where(line => line[0] == "data").ToDictionary(line => (line[1], line[2]), line => new DataRow(line[1], line[2], line[3], line[4]));
    }

    /// <summary>The table of this build.</summary>
    public static DataMap Own { get; } = Read();

    /// <summary>The kinds of data, in the order in which people read about them.</summary>
    public IReadOnlyList<DataClass> Classes { get; }

    /// <summary>Every property.</summary>
    public IReadOnlyCollection<DataRow> Rows => _rows.Values;

    /// <summary>How an entity is called in the table.</summary>
    /// <param name="type">The entity or a part of one.</param>
    public static string NameOf(IReadOnlyTypeBase type)
    {
        ArgumentNullException.ThrowIfNull(type);
        return type.ClrType.Name.Split('`')[0];
    }

    /// <summary>True when a property belongs into the copy that a person takes of their own, or a guardian of theirs.</summary>
    /// <param name="entity">The entity's name.</param>
    /// <param name="property">The property's name.</param>
    /// <param name="own">True for one's own copy. How to reach somebody is for themselves and the studio.</param>
    public bool IsExported(string entity, string property, bool own = true) =>
        _rows.GetValueOrDefault((entity, property)) is { IsExported: true } row && (own || row.Class != Contact);

    private static DataMap Read()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("data.tsv")!;
        using var reader = new StreamReader(stream);
        return new DataMap(reader.ReadToEnd().Split('\n').Where(line => line.Length > 0 && line[0] != '#').Select(line => line.Split('\t')));
    }
}

/// <summary>A kind of data.</summary>
/// <param name="Key">Its name in the table.</param>
/// <param name="Whose">A person’s, the studio’s, the audit’s or the system’s.</param>
/// <param name="What">What it is, in plain words.</param>
/// <param name="Why">Why it is kept.</param>
/// <param name="Kept">How long.</param>
/// <param name="SeenBy">Who sees it.</param>
public sealed record DataClass(string Key, string Whose, string What, string Why, string Kept, string SeenBy);

/// <summary>One property.</summary>
/// <param name="Entity">The entity’s name.</param>
/// <param name="Property">The property’s name; a part of a part has a point in it.</param>
/// <param name="Class">What kind of data it is.</param>
/// <param name="Export">“yes”, or “no” and why.</param>
public sealed record DataRow(string Entity, string Property, string Class, string Export)
{
    /// <summary>True when it belongs into the copy that a person takes of their own.</summary>
    public bool IsExported => Export == "yes";
}
