using ReedClinic.Data.Engine;
using ReedClinic.Data.Privacy;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Background;

/// <summary>
/// <c>ReedClinic.Web erased-people</c> prints who was erased, as ids to be kept outside of the database; and
/// <c>ReedClinic.Web erase-again FILE</c> erases whoever stands in such a file, after a back-up was restored.
/// </summary>
public static class ErasedPeopleCommand
{
    /// <summary>The word that asks for the list.</summary>
    public const string List = "erased-people";

    /// <summary>The word that asks for erasing.</summary>
    public const string Again = "erase-again";

    /// <summary>Prints the ids, one a line.</summary>
    /// <param name="args">Settings.</param>
    /// <param name="announcement">Where the lines go.</param>
    /// <returns>0.</returns>
    public static async Task<int> ListAsync(string[] args, Announcement announcement)
    {
        ArgumentNullException.ThrowIfNull(announcement);
        var app = CommandHost.Build(args);
        await using var _ = app.ConfigureAwait(false);
        foreach (var id in await app.Services.GetRequiredService<ErasedPeople>().ListAsync(CancellationToken.None).ConfigureAwait(false))
        {
            announcement.Say($"{id}");
        }

        return 0;
    }

    /// <summary>Erases again.</summary>
    /// <param name="args">The file, and settings.</param>
    /// <param name="announcement">Where the words go.</param>
    /// <returns>0 when it was done, 1 when the file can't be read as a list of ids; then nobody is erased.</returns>
    public static async Task<int> EraseAgainAsync(string[] args, Announcement announcement)
    {
        ArgumentNullException.ThrowIfNull(args);
        ArgumentNullException.ThrowIfNull(announcement);
        if (args.FirstOrDefault() is not { } file || !File.Exists(file))
        {
            announcement.Say("There is no such file. Name the one that erased-people was written to: erase-again FILE");
            return 1;
        }

        var lines = (await File.ReadAllLinesAsync(file).ConfigureAwait(false)).Select(line => line.Trim()).Where(line => line.Length > 0).ToList();
        if (lines.FindIndex(line => !Guid.TryParse(line, out var _)) is >= 0 and var wrong)
        {
            announcement.Say($"Nobody was erased: line {wrong + 1} of those that aren’t empty is no id, as erased-people prints them.");
            return 1;
        }

        var app = CommandHost.Build([.. args.Skip(1)]);
        await using var _ = app.ConfigureAwait(false);
        await app.Services.GetRequiredService<ClinicSchema>().RefuseNewerAsync(CancellationToken.None).ConfigureAwait(false);
        var found = await app.Services.GetRequiredService<ErasedPeople>().EraseAgainAsync([.. lines.Select(Guid.Parse)], CancellationToken.None).ConfigureAwait(false);
        announcement.Say($"Of {lines.Count} who were erased before, {found} were in this database and are erased again. What is left of them in its free pages goes when the program starts.");
        return 0;
    }
}
