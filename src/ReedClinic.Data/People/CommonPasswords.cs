using System.Collections.Frozen;

namespace ReedClinic.Data.People;

/// <summary>
/// The passwords that everybody tries: a list of some eighteen thousand, of eight characters and more, that lies in the
/// program. Nothing is asked of anybody outside. Its source and licence: docs/licences/common-passwords.txt.
/// </summary>
public static class CommonPasswords
{
    private static readonly Lazy<FrozenSet<string>> Read = new(ReadAll);

    /// <summary>The list, in small letters.</summary>
    public static IReadOnlySet<string> List => Read.Value;

    private static FrozenSet<string> ReadAll()
    {
        using var stream = typeof(CommonPasswords).Assembly.GetManifestResourceStream("common-passwords.txt")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries).ToFrozenSet(StringComparer.Ordinal);
    }
}
