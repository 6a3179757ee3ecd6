using ReedClinic.Architecture.Tests.Reading;

namespace ReedClinic.Architecture.Tests.House;

/// <summary>Nothing in the repository names a place that only one machine or one network has.</summary>
public static class Strangers
{
    // Put together here, so that this file does not name them itself.
    private static readonly string[] Places =
    [
        "/ho" + "me/", "/ro" + "ot/", "/wo" + "rk/", @"C:\Us" + "ers", "/Us" + "ers/",
        "nuget" + ".org", "npmjs" + ".org", "pypi" + ".org", "deb.debian" + ".org", "docker" + ".io", "mcr." + "microsoft.com",
    ];

    public static IEnumerable<string> Named(IEnumerable<Source> files, IReadOnlyDictionary<(string Path, string Place), string> reasons) =>
        from file in files
        from place in Places
        where !reasons.ContainsKey((file.Path, place))
        let at = file.Text.IndexOf(place, StringComparison.Ordinal)
        where at >= 0
        select $"{file.Path}:{file.LineOf(at)} names {place}";
}
