using System.Globalization;

namespace ReedClinic.Documents.Tests.Print;

/// <summary>Pages as pictures, compared with those that were looked at and accepted (in Print/Golden).</summary>
internal static class GoldenPicture
{
    private const int Side = 5;
    private const double MostInOneSquare = 20;
    private const double MostInAll = 0.35;

    /// <summary>Compares each page with its picture. What differs is written to tests/artifacts.</summary>
    public static async Task CompareAsync(string name, byte[] pdf)
    {
        var pages = await PicturesAsync(pdf);
        List<string> complaints = [];
        foreach (var (index, page) in pages.Index())
        {
            var file = string.Create(CultureInfo.InvariantCulture, $"{name}-{index + 1}.png");
            var golden = Path.Combine(Top(), "tests", "ReedClinic.Documents.Tests", "Print", "Golden", file);
            var complaint = File.Exists(golden) ? Difference(GreyPicture.Read(await File.ReadAllBytesAsync(golden)), page) : "there is no accepted picture of it";
            if (complaint is not null)
            {
                var seen = Path.Combine(Directory.CreateDirectory(Path.Combine(Top(), "tests", "artifacts", "golden")).FullName, file);
                await File.WriteAllBytesAsync(seen, page.Png());
                complaints.Add($"{file}: {complaint}. Look at tests/artifacts/golden/{file}; if it should look so, copy it to tests/ReedClinic.Documents.Tests/Print/Golden and say in docs/CHANGELOG.md what has changed.");
            }
        }

        Assert.True(complaints.Count == 0, string.Join('\n', complaints));
    }

    /// <summary>Each page as pdftoppm shows it, at 60 dots an inch.</summary>
    public static async Task<List<GreyPicture>> PicturesAsync(byte[] pdf)
    {
        var folder = Directory.CreateTempSubdirectory("pages");
        try
        {
            await Outside.ReadAsync(pdf, "pdftoppm", "-gray", "-r", "60", "{}", Path.Combine(folder.FullName, "page"));
            return [.. folder.GetFiles().OrderBy(file => file.Name, StringComparer.Ordinal).Select(file => GreyPicture.Plain(File.ReadAllBytes(file.FullName)))];
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>In what two pictures differ more than two ways of drawing the same may; null when they don’t.</summary>
    public static string? Difference(GreyPicture one, GreyPicture other)
    {
        if ((one.Width, one.Height) != (other.Width, other.Height))
        {
            return string.Create(CultureInfo.InvariantCulture, $"{other.Width} by {other.Height} pixels instead of {one.Width} by {one.Height}");
        }

        var apart = one.Means(Side).Zip(other.Means(Side), (a, b) => Math.Abs(a - b)).ToList();
        var worst = apart.IndexOf(apart.Max());
        var across = (one.Width + Side - 1) / Side;
        return apart[worst] <= MostInOneSquare && apart.Average() <= MostInAll
            ? null
            : string.Create(CultureInfo.InvariantCulture, $"it differs, by {apart.Average():0.00} of 255 in the mean and most, by {apart[worst]:0}, at {worst % across * Side}, {worst / across * Side}");
    }

    private static string Top()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "ReedClinic.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("The tests run outside the repository.");
    }
}
