using System.Globalization;
using ReedClinic.KillDriver;

namespace ReedClinic.Browser.Tests.Two;

public sealed class PortsTests
{
    [Fact]
    public async Task A_port_that_is_told_beforehand_is_none_that_the_machine_gives_to_others_meanwhile()
    {
        var given = (await File.ReadAllTextAsync("/proc/sys/net/ipv4/ip_local_port_range", TestContext.Current.CancellationToken))
            .Split((char[])['\t', ' ', '\n'], StringSplitOptions.RemoveEmptyEntries).Select(port => int.Parse(port, CultureInfo.InvariantCulture)).ToList();

        Assert.All(Enumerable.Range(1, 50).Select(_ => Ports.Free()), port => Assert.NotInRange(port, given[0], given[1]));
    }
}
