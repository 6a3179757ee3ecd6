using ReedClinic.KillDriver;

namespace ReedClinic.Containers.Tests.Deploy;

/// <summary>What whoever runs the machine does with the service `tools`.</summary>
internal static class ToolsWalk
{
    private const string Folder = "/backups";

    /// <summary>A back-up while people work, a look whether it is sound, and the way back.</summary>
    /// <param name="compose">The studio.</param>
    /// <param name="goOn">Says "after the back-up" at the bench, behind "before the back-up".</param>
    /// <param name="read">What stands there.</param>
    /// <param name="ct">Gives up.</param>
    public static async Task ComesBackFromABackUpAsync(Compose compose, Func<Task> goOn, Func<Task<string>> read, CancellationToken ct)
    {
        var made = await compose.ToolsAsync(ct, "backup", Folder);
        Assert.Contains("Backed up:", made, StringComparison.Ordinal);
        var backup = made[made.IndexOf(Folder + "/", StringComparison.Ordinal)..].Split('\n')[0].Trim();
        await goOn();
        Assert.Contains("after the back-up", await read(), StringComparison.Ordinal);

        await compose.ComposeAsync(ct, "stop", "web");
        Assert.Contains("This back-up is sound", await compose.ToolsAsync(ct, "verify", backup), StringComparison.Ordinal);
        Assert.Contains("Restored:", await compose.ToolsAsync(ct, "restore", backup), StringComparison.Ordinal);
        await compose.ComposeAsync(ct, "start", "web");
        await compose.HealthyAsync(ct, Compose.ServicesWithProxy);

        var found = await read();
        Assert.Contains("before the back-up", found, StringComparison.Ordinal);
        Assert.DoesNotContain("after the back-up", found, StringComparison.Ordinal);
    }

    /// <summary>Records of the first schema, as if this were an update of a studio that began with it. Nothing of the studio is left afterwards.</summary>
    public static async Task BacksUpBeforeTheSchemaChangesAsync(Compose compose, CancellationToken ct)
    {
        await compose.ComposeAsync(ct, "stop", "web");
        var database = (await compose.ComposeAsync(ct, "ps", "--quiet", "database")).Trim();
        await compose.RunAsync(ct, "docker", "cp", Path.Combine(PublishedApp.Top(), "tests", "fixtures", "first-schema", "postgres.sql"), $"{database}:/tmp/first.sql");
        await compose.ComposeAsync(
            ct, "exec", "-T", "database", "psql", "--quiet", "--username=reedclinic", "--dbname=reedclinic", "--set=ON_ERROR_STOP=1", "--output=/dev/null",
            "--command=DROP SCHEMA public CASCADE", "--command=CREATE SCHEMA public", "--file=/tmp/first.sql");

        var said = await compose.ComposeAsync(ct, "run", "--rm", "-T", "upgrade");

        Assert.Contains($"As they were, they lie in {Folder}/before-migrations/reedclinic-", said, StringComparison.Ordinal);
        Assert.Contains("The records have the schema of this version.", said, StringComparison.Ordinal);
    }
}
