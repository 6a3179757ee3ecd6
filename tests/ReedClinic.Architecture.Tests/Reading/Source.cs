namespace ReedClinic.Architecture.Tests.Reading;

/// <summary>One text file of the repository.</summary>
/// <param name="Path">From the top of the repository, with forward slashes.</param>
/// <param name="Text">All of it.</param>
public sealed record Source(string Path, string Text)
{
    public string Folder => Path[..Math.Max(0, Path.LastIndexOf('/'))];

    public string Name => Path[(Path.LastIndexOf('/') + 1)..];

    public string Extension => System.IO.Path.GetExtension(Path);

    public int Lines => Text.AsSpan().TrimEnd('\n').Count('\n') + 1;

    public int LineOf(int position) => Text.AsSpan(0, position).Count('\n') + 1;

    public bool IsUnder(string folder) => Path.StartsWith(folder + "/", StringComparison.Ordinal);
}
