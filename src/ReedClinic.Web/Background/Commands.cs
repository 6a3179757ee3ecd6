using ReedClinic.Data.Engine;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Background;

/// <summary>What the program does when its first word asks for it, instead of opening the studio.</summary>
public static class Commands
{
    private static readonly Dictionary<string, Func<string[], Announcement, Task<int>>> Known = new(StringComparer.Ordinal)
    {
        [AuditCommand.Name] = AuditCommand.RunAsync,
        [LostSecondStepCommand.Name] = LostSecondStepCommand.RunAsync,
        [ErasedPeopleCommand.List] = ErasedPeopleCommand.ListAsync,
        [ErasedPeopleCommand.Again] = ErasedPeopleCommand.EraseAgainAsync,
        [CheckCommand.Name] = CheckCommand.RunAsync,
        [BackupCommands.Backup] = BackupCommands.BackupAsync,
        [BackupCommands.Verify] = BackupCommands.VerifyAsync,
        [BackupCommands.Restore] = BackupCommands.RestoreAsync,
        [BackupCommands.Move] = BackupCommands.MoveAsync,
        [UpgradeCommand.Name] = UpgradeCommand.RunAsync,
    };

    private static string All => $"There are: {string.Join(", ", Known.Keys.Order(StringComparer.Ordinal))}. Without one, the studio is opened.";

    /// <summary>Runs the command that the first word names. A word that none has is refused: a typing slip must not open the studio.</summary>
    /// <param name="args">What the program was started with.</param>
    /// <param name="announcement">Where the words go.</param>
    /// <returns>What to end with; null when the studio is to be opened.</returns>
    public static async Task<int?> RunAsync(string[] args, Announcement announcement)
    {
        ArgumentNullException.ThrowIfNull(args);
        ArgumentNullException.ThrowIfNull(announcement);
        if (args is ["help" or "--help" or "-h", ..])
        {
            announcement.Say(All);
            return 0;
        }

        if (args is not [var first, .. var rest] || first.StartsWith('-') || first.StartsWith('/') || first.Contains('=', StringComparison.Ordinal))
        {
            return null;
        }

        if (Known.TryGetValue(first, out var command))
        {
            try
            {
                return await command(rest, announcement).ConfigureAwait(false);
            }
            catch (NewerSchemaException refused)
            {
                announcement.Say(refused.Message);
                return 1;
            }
        }

        announcement.Say($"There is no command '{first}'. {All}");
        return 2;
    }
}
