using System.Reflection.Metadata;
using System.Text;
using ReedClinic.KillDriver;

namespace ReedClinic.Web.Tests.Published;

/// <summary>What is handed on says nothing of the machine it was made on: a trace in a log names the sources from the repository's top.</summary>
public sealed class SourcePathTests
{
    private const string Top = "/_/";

    [Fact]
    public async Task No_file_names_the_folder_it_was_made_in()
    {
        var made = PublishedApp.Top();
        byte[][] spellings = [Encoding.UTF8.GetBytes(made), Encoding.Unicode.GetBytes(made)];

        var telling = Directory.EnumerateFiles(await PublishedApp.FolderAsync(), "*", SearchOption.AllDirectories)
            .Where(file => File.ReadAllBytes(file) is var bytes && spellings.Any(spelling => bytes.AsSpan().IndexOf(spelling) >= 0))
            .Select(Path.GetFileName);

        Assert.Empty(telling);
    }

    [Fact]
    public async Task A_trace_names_sources_from_the_repositorys_top()
    {
        var symbols = Directory.GetFiles(await PublishedApp.FolderAsync(), "ReedClinic.*.pdb");

        Assert.Equal(5, symbols.Length);
        foreach (var file in symbols)
        {
            using var read = MetadataReaderProvider.FromPortablePdbStream(File.OpenRead(file));
            var reader = read.GetMetadataReader();
            var names = reader.Documents.Select(document => reader.GetString(reader.GetDocument(document).Name)).ToList();
            Assert.Contains(names, name => name.StartsWith($"{Top}src/", StringComparison.Ordinal));
            Assert.DoesNotContain(names, name => Path.IsPathRooted(name) && !name.StartsWith(Top, StringComparison.Ordinal));
        }
    }
}
