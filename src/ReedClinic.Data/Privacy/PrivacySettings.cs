namespace ReedClinic.Data.Privacy;

/// <summary>What whoever runs the program settles about privacy.</summary>
/// <param name="BackupDays">How many days a back-up is kept at most: until then somebody who was erased may still be in one.</param>
public sealed record PrivacySettings(int BackupDays)
{
    /// <summary>The setting of <see cref="BackupDays"/>.</summary>
    public const string BackupDaysKey = "Privacy:BackupDays";

    /// <summary>Unless the setting says otherwise: five weeks.</summary>
    public const int UsualBackupDays = 35;
}
