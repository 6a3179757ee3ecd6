#!/usr/bin/env bash
# Installs or updates the program from the unpacked package that this file stands in. Records, settings and back-ups are left
# as they are. What it does stands in docs/operations/install.md.   ./install.sh    (as root)
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")"
[ "$(id -u)" -eq 0 ] || { echo 'Only root can do this.' >&2; exit 1; }
version=$(< version)
place=/opt/reedclinic/$version

id reedclinic > /dev/null 2>&1 || useradd --system --user-group --home-dir /var/lib/reedclinic --no-create-home --shell /usr/sbin/nologin reedclinic
install -d -m 755 /opt/reedclinic
install -d -m 750 -g reedclinic /etc/reedclinic /etc/reedclinic/secrets
install -d -m 700 -o reedclinic -g reedclinic /var/backups/reedclinic /var/lib/reedclinic
[ -e /etc/reedclinic/settings ] || install -m 640 -g reedclinic settings /etc/reedclinic/settings

# Under another name until all of it is there.
rm -rf "$place.part"
cp -r program "$place.part"
chown -R root:root "$place.part"
rm -rf "$place"
mv "$place.part" "$place"

install -m 644 reedclinic.service reedclinic-backup.service reedclinic-backup.timer /etc/systemd/system/
install -m 755 reedclinic /usr/local/sbin/reedclinic
ln -sfn "$version" /opt/reedclinic/current
systemctl daemon-reload
systemctl enable --quiet reedclinic.service reedclinic-backup.timer
echo "Version $version is in place. Settings: /etc/reedclinic/settings. Then: systemctl restart reedclinic reedclinic-backup.timer"
