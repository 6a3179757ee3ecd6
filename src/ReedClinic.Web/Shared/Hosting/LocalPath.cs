namespace ReedClinic.Web.Shared.Hosting;

/// <summary>A way back that stays on this site.</summary>
public static class LocalPath
{
    /// <summary>The path if it is one of ours, else the home page.</summary>
    /// <param name="path">What a form or a link asked for.</param>
    /// <returns>A path that begins with a single slash.</returns>
    public static string OrHome(string? path) =>
        path is { Length: > 0 and <= 2_000 } && path[0] == '/' && !path.Any(char.IsControl)
            && (path.Length == 1 || path[1] is not ('/' or '\\'))
            ? path
            : "/";
}
