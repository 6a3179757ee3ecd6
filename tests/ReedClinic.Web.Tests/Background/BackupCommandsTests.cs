using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Backups;
using ReedClinic.Domain.People;
using ReedClinic.Web.Background;
using ReedClinic.Web.Shared.Hosting;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Background;

/// <summary>The commands of whoever runs the machine, as they are typed.</summary>
public sealed class BackupCommandsTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task One_command_backs_up_one_says_it_is_sound_and_one_brings_it_back(ClinicEngine engine)
    {
        var (db, folder) = (await databases.FreshAsync(engine), Directory.CreateTempSubdirectory("reedclinic-commands-"));
        var keys = Path.Combine(folder.FullName, "keys");
        Directory.CreateDirectory(keys);
        await File.WriteAllTextAsync(Path.Combine(keys, "key-1.xml"), "<key/>", Ct);
        await AddAsync(db, "Ines");
        var copies = Path.Combine(folder.FullName, "copies");

        var made = await RunAsync(db, [BackupCommands.Backup, copies, $"--Keys:Folder={keys}"]);
        var backup = Assert.Single(BackupLayout.In(copies)).Folder;
        var verified = await RunAsync(db, [BackupCommands.Verify, backup]);
        await AddAsync(db, "Tomas, after it");
        await File.WriteAllTextAsync(Path.Combine(keys, "key-1.xml"), "<other/>", Ct);
        var restored = await RunAsync(db, [BackupCommands.Restore, backup, $"--Keys:Folder={keys}"]);

        Assert.Equal((0, 0, 0), (made.Code, verified.Code, restored.Code));
        Assert.Contains($"in {backup}", made.Words, StringComparison.Ordinal);
        Assert.Contains("This back-up is sound", verified.Words, StringComparison.Ordinal);
        Assert.Contains("What was there before lies in", restored.Words, StringComparison.Ordinal);
        await using var context = db.CreateDbContext();
        Assert.Equal("Ines", (await context.Set<Student>().AsNoTracking().SingleAsync(Ct)).Name);
        Assert.Equal("<key/>", await File.ReadAllTextAsync(Path.Combine(keys, "key-1.xml"), Ct));
        folder.Delete(recursive: true);
    }

    [Fact]
    public async Task A_restore_that_was_done_and_differs_from_what_the_back_up_says_ends_otherwise_than_one_that_was_refused()
    {
        var (db, folder) = (await databases.FreshAsync(ClinicEngine.Postgres), Directory.CreateTempSubdirectory("reedclinic-commands-"));
        await AddAsync(db, "Ines");
        await RunAsync(db, [BackupCommands.Backup, folder.FullName]);
        var backup = Assert.Single(BackupLayout.In(folder.FullName)).Folder;
        var (about, sums) = (Path.Combine(backup, BackupLayout.About), Path.Combine(backup, BackupLayout.Sums));
        var before = await File.ReadAllBytesAsync(about, Ct);
        var after = Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(before).Replace("\"Students\": 1", "\"Students\": 2", StringComparison.Ordinal));
        await File.WriteAllBytesAsync(about, after, Ct);
        await File.WriteAllTextAsync(sums, (await File.ReadAllTextAsync(sums, Ct)).Replace(Sum(before), Sum(after), StringComparison.Ordinal), Ct);

        var (code, words) = await RunAsync(db, [BackupCommands.Restore, backup]);

        Assert.Contains("Students has 1 rows instead of 2.", words, StringComparison.Ordinal);
        Assert.Contains("isn’t what the back-up says of itself", words, StringComparison.Ordinal);
        Assert.Equal(BackupCommands.DoneWithALook, code);
        folder.Delete(recursive: true);

        static string Sum(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
    }

    [Fact]
    public async Task One_command_takes_a_file_of_SQLite_to_PostgreSQL()
    {
        var (db, server) = (await databases.FreshAsync(ClinicEngine.Sqlite), await databases.FreshAsync(ClinicEngine.Postgres));
        await AddAsync(db, "Ines");
        var file = new Microsoft.Data.Sqlite.SqliteConnectionStringBuilder(db.Connection).DataSource;

        (int Code, string Words) busy;
        await using (var atWork = db.CreateDbContext())
        {
            Assert.True(await atWork.Set<Student>().AnyAsync(Ct));
            await atWork.Database.OpenConnectionAsync(Ct);
            busy = await RunAsync(server, [BackupCommands.Move, file]);
        }

        await using (var pooled = new Microsoft.Data.Sqlite.SqliteConnection(db.Connection))
        {
            Microsoft.Data.Sqlite.SqliteConnection.ClearPool(pooled); // as when the program has ended
        }

        var wrong = await RunAsync(db, [BackupCommands.Move, file]);
        var torn = await RunAsync(server, [BackupCommands.Move, file, "--Backups:Folder", "somewhere"]);
        var moved = await RunAsync(server, [BackupCommands.Move, file, $"--Backups:Folder={server.MediaFolder}-backups"]);

        Assert.Equal((1, 1, 1), (busy.Code, wrong.Code, torn.Code));
        Assert.Contains("Somebody uses this file", busy.Words, StringComparison.Ordinal);
        Assert.Contains("'--Backups:Folder' has no value", torn.Words, StringComparison.Ordinal);
        Assert.Contains("The settings don’t say PostgreSQL", wrong.Words, StringComparison.Ordinal);
        Assert.Equal((0, moved.Words), (moved.Code, moved.Words));
        await using var context = server.CreateDbContext();
        Assert.Equal("Ines", (await context.Set<Student>().SingleAsync(Ct)).Name);
        Directory.Delete(server.MediaFolder + "-backups", recursive: true);
    }

    [Theory]
    [InlineData(BackupCommands.Verify)]
    [InlineData(BackupCommands.Restore)]
    public async Task What_is_no_back_up_is_refused_in_words(string command)
    {
        var db = await databases.FreshAsync(ClinicEngine.Sqlite);
        await AddAsync(db, "Ines");

        var nothing = await RunAsync(db, [command]);
        var nowhere = await RunAsync(db, [command, "no-such-folder"]);

        Assert.Equal((1, 1), (nothing.Code, nowhere.Code));
        Assert.Contains(command == BackupCommands.Verify ? "There is no back-up in" : "Something is missing: restore BACKUP", nothing.Words, StringComparison.Ordinal);
        Assert.Contains("There is no folder 'no-such-folder'", nowhere.Words, StringComparison.Ordinal);
        await using var context = db.CreateDbContext();
        Assert.Equal(1, await context.Set<Student>().CountAsync(Ct));
    }

    [Fact]
    public async Task Verify_alone_reads_the_newest_of_the_folder_in_the_settings_and_says_which_it_was()
    {
        var (db, folder) = (await databases.FreshAsync(ClinicEngine.Sqlite), Directory.CreateTempSubdirectory("reedclinic-newest-").FullName);
        await AddAsync(db, "Ines");
        var setting = $"--{BackupSettings.FolderKey}={folder}";
        await RunAsync(db, [BackupCommands.Backup, setting]);
        var newest = Assert.Single(BackupLayout.In(folder)).Folder;
        var older = Directory.CreateDirectory(Path.Combine(folder, "reedclinic-20200101T000000Z")).FullName;
        Directory.CreateDirectory(Path.Combine(folder, "reedclinic-20990101T000000Z.unfinished"));

        var sound = await RunAsync(db, [BackupCommands.Verify, setting]);
        await File.AppendAllTextAsync(Path.Combine(newest, BackupLayout.Sqlite), "x", Ct);
        var spoilt = await RunAsync(db, [BackupCommands.Verify, setting]);

        Assert.Equal((0, 1), (sound.Code, spoilt.Code));
        Assert.All([sound.Words, spoilt.Words], words => Assert.Contains(newest, words, StringComparison.Ordinal));
        Assert.DoesNotContain(older, sound.Words, StringComparison.Ordinal);
        Assert.Contains("This back-up is sound", sound.Words, StringComparison.Ordinal);
        Assert.Contains("This back-up is not sound", spoilt.Words, StringComparison.Ordinal);
        Directory.Delete(folder, recursive: true);
    }

    [Theory]
    [InlineData("help")]
    [InlineData("--help")]
    [InlineData("-h")]
    public async Task Whoever_asks_for_help_gets_the_commands_and_opens_no_studio(string word)
    {
        await using var words = new StringWriter();

        Assert.Equal(0, await Commands.RunAsync([word], new Announcement(words)));

        Assert.Contains("There are: backup, check", words.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("There is no command", words.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, "There is no file")]
    [InlineData("no certificate", "isn’t a certificate with its key")]
    public async Task A_certificate_for_the_keys_that_cannot_be_used_is_told_in_a_sentence(string? content, string why)
    {
        var (db, file) = (await databases.FreshAsync(ClinicEngine.Sqlite), Path.Combine(Path.GetTempPath(), $"{Parcel.NewOperation().Value}.pfx"));
        if (content is not null)
        {
            await File.WriteAllTextAsync(file, content, Ct);
        }

        var trouble = await Assert.ThrowsAsync<InvalidOperationException>(() => RunAsync(db, [BackupCommands.Verify, $"--Keys:Certificate={file}"]));

        Assert.StartsWith($"Keys:Certificate names '{file}'", trouble.Message, StringComparison.Ordinal);
        Assert.Contains(why, trouble.Message, StringComparison.Ordinal);
        File.Delete(file);
    }

    [Fact]
    public async Task A_word_that_is_no_command_opens_no_studio()
    {
        await using var words = new StringWriter();

        Assert.Equal(2, await Commands.RunAsync(["bakcup"], new Announcement(words)));
        Assert.Null(await Commands.RunAsync([], new Announcement(words)));
        Assert.Null(await Commands.RunAsync(["--urls", "http://127.0.0.1:0"], new Announcement(words)));

        Assert.Contains("There is no command 'bakcup'. There are: backup, check", words.ToString(), StringComparison.Ordinal);
    }

    private static async Task AddAsync(TestDatabase db, string name)
    {
        await using var context = db.CreateDbContext();
        context.Add(new Student(new StudentId(Parcel.NewOperation().Value), name));
        await context.SaveChangesAsync(Ct);
    }

    private static async Task<(int Code, string Words)> RunAsync(TestDatabase db, string[] args)
    {
        await using var words = new StringWriter();
        var code = await Commands.RunAsync([.. args, .. db.Settings.Select(setting => $"--{setting.Key}={setting.Value}")], new Announcement(words));
        return (code ?? -1, words.ToString());
    }
}
