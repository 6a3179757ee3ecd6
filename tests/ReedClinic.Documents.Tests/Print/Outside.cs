using System.Diagnostics;
using System.Text;

namespace ReedClinic.Documents.Tests.Print;

/// <summary>Programs that aren't ours and read what was printed: Poppler's and qpdf.</summary>
internal static class Outside
{
    /// <summary>Runs one; fails when it does.</summary>
    public static async Task<string> RunAsync(string program, params IEnumerable<string> arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true, StandardOutputEncoding = Encoding.UTF8 };
        using var process = Process.Start(start) ?? throw new InvalidOperationException($"{program} did not start.");
        var (said, complained) = (process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken), process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken));
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.True(process.ExitCode == 0, $"{program} ended with {process.ExitCode}: {await said} {await complained}");
        Assert.Equal("", await complained);
        return await said;
    }

    /// <summary>Runs one on a PDF; “{}” among the arguments stands for the file.</summary>
    public static async Task<string> ReadAsync(byte[] pdf, string program, params IEnumerable<string> arguments)
    {
        var file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".pdf");
        try
        {
            await File.WriteAllBytesAsync(file, pdf, TestContext.Current.CancellationToken);
            return await RunAsync(program, arguments.Select(argument => argument == "{}" ? file : argument));
        }
        finally
        {
            File.Delete(file);
        }
    }
}
